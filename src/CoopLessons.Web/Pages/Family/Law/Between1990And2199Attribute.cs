using System.ComponentModel.DataAnnotations;

namespace CoopLessons.Web.Pages.Families.Law;

/// <summary>A day that a family can mean.</summary>
[AttributeUsage(AttributeTargets.Property | AttributeTargets.Parameter)]
public sealed class Between1990And2199Attribute() : ValidationAttribute("The day lies between 1990 and 2199.")
{
    public override bool IsValid(object? value) => value is not DateOnly day || day.Year is >= 1990 and <= 2199;
}
