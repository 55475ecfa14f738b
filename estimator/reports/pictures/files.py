"""All pictures of a job as files: each as SVG, and as PNG beside it."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

from estimator.estimated import Estimate
from estimator.faults import Fault, Refused
from estimator.reports.alike import alike_cuts
from estimator.reports.pictures.layout_pictures import layout_pictures, remnant_pictures
from estimator.reports.pictures.marks import Picture
from estimator.reports.pictures.png import png_bytes
from estimator.reports.pictures.svg import svg_text
from estimator.reports.pictures.trim_pictures import trim_pictures
from estimator.reports.pictures.widths_picture import is_compared, widths_picture
from estimator.reports.saving import write_whole


def all_pictures(estimate: Estimate) -> Iterator[Picture]:
    """The layouts, the trims, and the widths compared."""
    for choice in estimate.fabrics:
        for number in range(len(choice.chosen.stash)):
            yield from remnant_pictures(choice, number, estimate)
        for number, *_ in alike_cuts(choice):
            yield from layout_pictures(choice, number, estimate)
    yield from trim_pictures(estimate)
    for choice in estimate.fabrics:
        if is_compared(choice):
            yield widths_picture(choice, estimate)


def save_pictures(estimate: Estimate, folder: Path) -> int:
    """Writes all pictures into a folder, which is made where there is none; says how many.

    Raises Refused, and writes nothing, where a file of another making stands in the way.
    """
    pictures = list(all_pictures(estimate))
    try:
        folder.mkdir(exist_ok=True)
    except (OSError, ValueError) as problem:
        why = getattr(problem, "strerror", None) or str(problem)
        fault = Fault(str(folder), f"cannot be made ({why})", "choose another folder")
        raise Refused([fault]) from None
    taken = [file for one in pictures for file in _in_the_way(folder, one)]
    if taken:
        right = "choose another folder"
        raise Refused([Fault(str(file), "is no picture of ours", right) for file in taken])
    for one in pictures:
        write_whole(folder / f"{one.stem}.svg", svg_text(one).encode())
        write_whole(folder / f"{one.stem}.png", png_bytes(one))
    return len(pictures)


def _in_the_way(folder: Path, picture: Picture) -> Iterator[Path]:
    """Files of the picture's names that it was not written to before."""
    drawn, dotted = (folder / f"{picture.stem}.{kind}" for kind in ("svg", "png"))
    ours = drawn.is_file() and f'id="{picture.stem}-words"'.encode() in drawn.read_bytes()
    if drawn.exists() and not ours:
        yield drawn
    if dotted.exists() and not (ours and dotted.is_file()):
        yield dotted
