using System.ComponentModel.DataAnnotations;
using System.Text;
using CoopLessons.Web.Phone;
using CoopLessons.Web.Security;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.ModelBinding;

namespace CoopLessons.Web.Hosting;

public static class PageSetup
{
    public static void AddPages(this IServiceCollection services, ServerSettings settings)
    {
        services.Configure<CookieTempDataProviderOptions>(o =>
        {
            o.Cookie.Name = (settings.PublicIsHttps ? "__Host-" : "") + "cooplessons-said";
            o.Cookie.SecurePolicy = settings.PublicIsHttps ? CookieSecurePolicy.Always : CookieSecurePolicy.SameAsRequest;
            o.Cookie.Path = "/";
        });
        services.AddRouting(o => o.LowercaseUrls = true);
        services.AddRazorPages(o => Access.Apply(o.Conventions))
            .AddMvcOptions(o =>
            {
                o.Filters.Add(new KeptAnswers());
                o.Filters.Add(new AnswerablePages());
                o.Filters.Add(new Sealing.SealRefusals());
                o.ModelBinderProviders.Insert(0, new PlainTextBinderProvider());
                var say = o.ModelBindingMessageProvider;
                say.SetValueMustNotBeNullAccessor(_ => "Please fill this in.");
                say.SetMissingBindRequiredValueAccessor(_ => "Please fill this in.");
                say.SetMissingKeyOrValueAccessor(() => "Please fill this in.");
                say.SetAttemptedValueIsInvalidAccessor((value, _) => $"“{Short(value)}” is not understood here.");
                say.SetNonPropertyAttemptedValueIsInvalidAccessor(value => $"“{Short(value)}” is not understood here.");
                say.SetValueIsInvalidAccessor(value => $"“{Short(value)}” is not understood here.");
                say.SetUnknownValueIsInvalidAccessor(_ => "This is not understood here.");
                say.SetNonPropertyUnknownValueIsInvalidAccessor(() => "This is not understood here.");
                say.SetValueMustBeANumberAccessor(_ => "Please give a whole number.");
                say.SetNonPropertyValueMustBeANumberAccessor(() => "Please give a whole number.");
            });
    }

    private static string Short(string value) => value.Length > 40 ? value[..40] + "…" : value;

    /// <summary>Reads every text field as text: control characters and halves of characters go, line ends become one sign.</summary>
    private sealed class PlainTextBinderProvider : IModelBinderProvider
    {
        public IModelBinder? GetBinder(ModelBinderProviderContext context) =>
            // A password is taken exactly as it was typed.
            context.Metadata.ModelType == typeof(string) && context.Metadata.DataTypeName != nameof(DataType.Password) ? new PlainTextBinder() : null;
    }

    private sealed class PlainTextBinder : IModelBinder
    {
        public Task BindModelAsync(ModelBindingContext bindingContext)
        {
            var result = bindingContext.ValueProvider.GetValue(bindingContext.ModelName);
            if (result == ValueProviderResult.None)
                return Task.CompletedTask;
            bindingContext.ModelState.SetModelValue(bindingContext.ModelName, result);
            var text = Clean(result.FirstValue ?? "");
            bindingContext.Result = ModelBindingResult.Success(
                text.Length == 0 && bindingContext.ModelMetadata.ConvertEmptyStringToNull ? null : text);
            return Task.CompletedTask;
        }

        private static string Clean(string text)
        {
            var clean = new StringBuilder(text.Length);
            foreach (var rune in text.ReplaceLineEndings("\n").EnumerateRunes())
            {
                if (rune.Value is '\n' or '\t' || !Rune.IsControl(rune))
                    clean.Append(rune.ToString());
            }

            return clean.ToString().Trim();
        }
    }
}
