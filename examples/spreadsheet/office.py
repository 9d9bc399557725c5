"""Fills the sheet of dishes that is open in LibreOffice Calc, with table.py.

As a macro: copy this file and table.py to the directory Scripts/python of your
LibreOffice profile, keep day.json beside the document, and run fill_sheet from
Tools, Macros. The service is at COOKDAY_SERVICE, or http://127.0.0.1:8018.

By itself, against an office that listens on a pipe, for a test:

    office.py PIPE http://127.0.0.1:8018 dishes.csv filled.csv
"""
import json
import os
import sys
import time
import urllib.parse

import uno
from com.sun.star.beans import PropertyValue

sys.path.insert(0, os.path.dirname(os.path.abspath(__file__)))
import table  # noqa: E402  (stands beside this file)


def fill_document(document, service):
    """Reads the table at A1 of the first sheet and writes the filled one in its place."""
    sheet = document.Sheets.getByIndex(0)
    cursor = sheet.createCursor()
    cursor.gotoEndOfUsedArea(False)
    width, height = cursor.RangeAddress.EndColumn + 1, cursor.RangeAddress.EndRow + 1
    cells = [[sheet.getCellByPosition(x, y).String for x in range(width)] for y in range(height)]
    rows = [dict(zip(cells[0], line)) for line in cells[1:] if line[0]]
    folder = os.path.dirname(uno.fileUrlToSystemPath(document.URL))
    with open(os.path.join(folder, "day.json"), encoding="utf-8") as f:
        day = json.load(f)
    for y, line in enumerate(table.fill(rows, day, service)):
        for x, text in enumerate(line):
            sheet.getCellByPosition(x, y).String = text  # as text: a name must not become a formula


def fill_sheet(*_):
    """The macro."""
    fill_document(XSCRIPTCONTEXT.getDocument(), os.environ.get("COOKDAY_SERVICE", "http://127.0.0.1:8018"))  # noqa: F821


g_exportedScripts = (fill_sheet,)


def setting(name, value):
    p = PropertyValue()
    p.Name, p.Value = name, value
    return p


def office(pipe):
    """The running office, which takes a while to start."""
    here = uno.getComponentContext()
    resolver = here.ServiceManager.createInstanceWithContext("com.sun.star.bridge.UnoUrlResolver", here)
    for _ in range(120):
        try:
            return resolver.resolve(f"uno:pipe,name={pipe};urp;StarOffice.ComponentContext")
        except Exception:  # not there yet
            time.sleep(0.5)
    raise SystemExit("the office does not answer")


def main(pipe, service, source, target):
    there = office(pipe)
    desktop = there.ServiceManager.createInstanceWithContext("com.sun.star.frame.Desktop", there)
    address = uno.systemPathToFileUrl(os.path.abspath(source))
    text = "44,34,76,1,1/2/2/2/3/2/4/2/5/2"  # comma, quote, UTF-8, from line 1, every column text
    options = [setting("Hidden", True), setting("FilterName", "Text - txt - csv (StarCalc)"), setting("FilterOptions", text)]
    document = desktop.loadComponentFromURL(address, "_blank", 0, tuple(options))
    try:
        fill_document(document, service)
        document.storeToURL(uno.systemPathToFileUrl(os.path.abspath(target)), tuple(options[1:]))
    finally:
        document.close(True)
        desktop.terminate()


if __name__ == "__main__":
    main(*sys.argv[1:])
