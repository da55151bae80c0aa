using CoopLessons.Web.Commands;

return await CommandTable.RunAsync(args);

/// <summary>Named so that tests can start the program in their own process.</summary>
public partial class Program;
