"""Pictures on a sheet: each in rows of its own, so that it covers no cell that says something."""

from __future__ import annotations

import io

from openpyxl.drawing.fill import Blip
from openpyxl.drawing.geometry import PresetGeometry2D
from openpyxl.drawing.image import Image
from openpyxl.drawing.picture import PictureFrame
from openpyxl.drawing.spreadsheet_drawing import AnchorMarker, OneCellAnchor
from openpyxl.drawing.xdr import XDRPositiveSize2D
from openpyxl.worksheet.worksheet import Worksheet

from estimator.reports.pictures.lettering import harmless
from estimator.reports.pictures.marks import Picture
from estimator.reports.pictures.png import png_bytes
from estimator.reports.printing import PIXELS, POINTS

PIXELS_PER_UNIT = 1.4
"""So that the small letters of a picture are some 8 points high on paper."""
HIGHEST_ROW = 408.0
"""Points: no spreadsheet takes a row higher than 409."""
MARGIN = 6.0
LONGEST_WORDS = 2000
EMU_A_PIXEL = 9525
"""914 400 to the inch (ECMA-376), of 96 pixels."""


def put_picture(sheet: Worksheet, row: int, picture: Picture) -> int:
    """A picture at the left edge of ``row``, which is made as high as it; the row after it."""
    image = Image(io.BytesIO(png_bytes(picture)))
    image.width = round(picture.width * PIXELS_PER_UNIT)
    image.height = round(picture.height * PIXELS_PER_UNIT)
    image.anchor = _anchor(row, image, f"{picture.title}. {picture.description}")
    sheet.add_image(image)
    left = image.height * POINTS / PIXELS + MARGIN
    while left > 0:
        sheet.row_dimensions[row].height = round(min(left, HIGHEST_ROW), 1)
        left -= HIGHEST_ROW
        row += 1
    return row


def _anchor(row: int, image: Image, words: str) -> OneCellAnchor:
    """The place of a picture in column A, with its words for whoever cannot see it."""
    frame = PictureFrame()
    frame.nvPicPr.cNvPr.id = row
    frame.nvPicPr.cNvPr.name = f"Picture in row {row}"
    frame.nvPicPr.cNvPr.descr = harmless(words)[:LONGEST_WORDS]
    frame.blipFill.blip = Blip()
    frame.spPr.prstGeom = PresetGeometry2D(prst="rect")
    frame.spPr.ln = None
    size = XDRPositiveSize2D(image.width * EMU_A_PIXEL, image.height * EMU_A_PIXEL)
    return OneCellAnchor(AnchorMarker(row=row - 1), size, pic=frame)
