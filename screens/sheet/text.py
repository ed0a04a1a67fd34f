"""The build sheet as plain text, to be sent or printed."""

from screens.sheet.content import CLOSING, Sheet


def as_text(sheet: Sheet) -> str:
    """Return the sheet in lines of one column: nothing depends on the width of a letter."""
    lines = [sheet.name, sheet.made, ""]
    for part in sheet.parts:
        lines += [part.title, "-" * len(part.title)]
        for label, value, known in part.lines:
            lines.append(f"{label}: {value}" + (f" ({known})" if known else ""))
        lines.append("")
    lines.append(CLOSING)
    return "\n".join(lines) + "\n"
