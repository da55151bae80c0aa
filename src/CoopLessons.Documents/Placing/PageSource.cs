namespace CoopLessons.Documents.Placing;

/// <summary>Kinds of files that pages are taken from.</summary>
public enum PageKind { Pdf, Png, Jpeg }

/// <summary>A file of pages. It has been through <see cref="Uploads.PrintableFile"/>.</summary>
public sealed record PageSource(string Path, PageKind Kind);
