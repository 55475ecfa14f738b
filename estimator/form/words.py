"""What the form calls the keys of a plan, what it says of them, and an example of each.

A key that is not named here is its own heading, with no explanation.
"""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Words:
    """A column's heading, what is meant by it, and an example."""

    heading: str
    meaning: str = ""
    example: str = ""


TITLES = {
    "garment": "Garment", "measures": "Measures", "fabric": "Fabrics", "piece": "Pieces",
    "seam": "Seams", "trim": "Trims", "elastic": "Elastics", "notion": "Notions",
    "lacing": "Lacings", "boning": "Boning", "loops": "Button loops", "thread": "Threads",
    "fabric.widths": "Widths",
    "piece.cut": "Cut differently", "piece.edges": "Named edges",
    "piece.takes_up": "Pleats, tucks, darts", "trim.pleats": "Pleated trims", "sold": "Packs",
}  # fmt: skip
"""Titles of sheets by the table, or by the key of a table whose entries have a sheet of their own;
any other table has its own name."""

ABOUT = {
    "garment": "What holds for the whole garment. Leave a line empty, and what is usual is taken.",
    "measures": "Body measures, or sizes that several pieces share. Pieces may use them: write "
    "from waist / 2 + 1 in where a size is asked for.",
    "fabric": "One row for each fabric, lining and interfacing.",
    "piece": "One row for each piece, with its finished sizes: as on the wearer, without seams and "
    "hems. Those are added for you.",
    "seam": "Which edges are sewn to each other, where a trim follows the seam, an edge is "
    "gathered, or the allowance is unusual. Other seams need no row.",
    "trim": "Ribbon, lace, braid, cord: one row for each.",
    "elastic": "Elastic, cut from the body measure.",
    "notion": "Zips, buttons, hooks: what is bought by number.",
    "lacing": "A lace crossed through eyelets up an opening.",
    "boning": "Bones for channels, and the casing that holds them.",
    "loops": "Loops of cord or tube, one for each button.",
    "thread": "One row for each thread; one that does not say what it sews, sews all the rest.",
    "fabric.widths": "Only for widths that have their own price or usable width.",
    "piece.cut": "Only for fabrics from which a piece is cut otherwise than the first: a lining "
    "that is shorter, an interfacing without seam allowances.",
    "piece.edges": "Only for edges other than top, bottom, left and right: a neckline, an armhole.",
    "piece.takes_up": "Folds that are sewn into a piece before it has its finished size.",
    "sold": "Only where you know in which packs or cards a thing is sold.",
}  # fmt: skip
"""What each sheet is for, in a line below its title."""

_EDGE = "how it is finished: choose one and write your own depth; empty is a plain seam"
_BUYS = {
    "fabric": "cotton-poplin", "trim": "satin-ribbon", "elastic": "woven-elastic",
    "notion": "shell-button", "lacing": "drawstring-cord", "boning": "costume-boning",
    "loops": "piping-cord", "thread": "sewing-thread",
}  # fmt: skip
"""Of the demo catalog an item for each table that buys."""
_WORDS: dict[str, tuple[str, str, str]] = {
    **{
        f"{table}.buy": ("Buy", "an item of the catalog; empty if there is none", item)
        for table, item in _BUYS.items()
    },
    "name": ("Name", "your own name for it, each only once", ""),
    "note": ("Note", "anything to remember; it stands on the list and the measure sheet", ""),
    "quantity": ("Quantity", "how many", "2"),
    "width": ("Width", "", "20 1/4"),
    "length": ("Length", "", "26"),
    "colour": ("Colour", "", "blue"),
    "price": ("Price", "with what it is for", "8.50 per yd"),
    "step": ("Step", "by what the shop raises a length", "1/8 yd"),
    "minimum": ("Minimum", "the least length that the shop cuts", "1/2 yd"),
    "shrinkage": ("Shrinkage", "of the length, in the first wash", "5 %"),
    "waste": ("Waste", "what to buy over", "5 %"),
    "size": ("Size", "", "28"),
    # the garment
    "garment.name": ("Name", "what the list calls it", "Gathered skirt"),
    "garment.unit": ("Unit", "of every size without a unit of its own", "in"),
    "garment.mark": ("Mark", "cut sizes go up to the next", "1/16"),
    "garment.copies": ("Copies", "how many of the garment are made alike", "1"),
    "garment.wearer": ("Wearer", "for the cautions on the list", "adult"),
    "garment.currency": ("Currency", "three letters; only where prices are stated here", "USD"),
    "garment.seam_allowance": ("Seam allowance", "of every edge that says nothing else", "5/8"),
    "garment.turn_under": ("Turn under", "what a hem or a ribbon's end is folded in by", "1/4"),
    "garment.rolled_hem": ("Rolled hem", "its depth, turned twice", "1/8"),
    "garment.serged": ("Serged", "what the overlocker trims off", "1/4"),
    "garment.overlap": ("Overlap", "of a trim that is joined in the round", "1/2"),
    "garment.elastic_overlap": ("Elastic overlap", "where its ends are sewn together", "1"),
    "garment.elastic_stretch": ("Elastic stretch", "how much shorter elastic is cut", "10 %"),
    "garment.straightening": ("Straightening", "cut off each end of a fabric", "1"),
    "garment.selvedge": ("Selvedge", "at each side of a fabric that cannot be used", "1/2"),
    "garment.layout": ("Layout", "straight rows if close layouts are not wanted", "least fabric"),
    "garment.laid": ("Laid", "in one layer, or folded lengthwise and cut in pairs", "open"),
    "garment.fabric_waste": ("Fabric waste", "what to buy over of each fabric", "0 %"),
    "garment.trim_waste": ("Trim waste", "what to buy over of each trim", "5 %"),
    "measures.name": ("Measure", "each only once", "waist"),
    # fabrics
    "fabric.name": ("Name", "your own name for it; pieces are cut from it by this name", "print"),
    "fabric.role": ("Role", "what it does in the garment", "main"),
    "fabric.widths": ("Widths", "that your shop has, with ; between; empty if Buy is filled in",
                      "44 in; 58 in"),
    "fabric.width": ("Width", "only to fix one; else the cheapest is taken", "44 in"),
    "fabric.usable": ("Usable", "measured between the selvedges", "43"),
    "fabric.selvedge": ("Selvedge", "at each side, cannot be used", "1/2"),
    "fabric.bolt": ("Bolt", "the longest length in one piece", "15 yd"),
    "fabric.shrinkage_across": ("Shrinkage across", "of the width, in the first wash", "2 %"),
    "fabric.one_dye_lot": (
        "One dye lot",
        "yes where all of it must match: bought in one length where a bolt is long enough",
        "no",
    ),
    "fabric.nap": ("Nap", "yes for velvet, corduroy and prints with an up and a down", "no"),
    "fabric.repeat": ("Repeat", "of a print that is matched, along the fabric", "3"),
    "fabric.repeat_across": ("Repeat across", "of a plaid, across the fabric", "4"),
    "fabric.straightening": ("Straightening", "cut off each end, if not as for the garment", "1"),
    "fabric.layout": ("Layout", "if not as for the garment", "straight rows"),
    "fabric.laid": ("Laid", "if not as for the garment", "folded"),
    # pieces
    "piece.name": ("Name", "your own name for it, without a colon", "skirt panel"),
    "piece.cut": ("Cut from", "a fabric, or several with ; between, the outer one first",
                  "print; lining"),
    "piece.quantity": ("Quantity", "how many of it, from each fabric", "4"),
    "piece.width": ("Width", "finished, across the fabric", "20 1/4"),
    "piece.length": ("Length", "finished, along the fabric", "from skirt length"),
    "piece.edges.top": ("Top edge", _EDGE, "casing 1 in"),
    "piece.edges.bottom": ("Bottom edge", "as the top edge", "hem 1 1/4 in"),
    "piece.edges.left": ("Left edge", "as the top edge", "selvedge"),
    "piece.edges.right": ("Right edge", "as the top edge", "rolled hem"),
    "piece.made": ("Made", "how it is made up; empty is a flat piece", "folded band"),
    "piece.shape": ("Shape", "empty is a rectangle; box is the smallest rectangle round a paper "
                    "pattern", "taper"),
    "piece.onto": ("Onto", "the edge that it is sewn to, and is as long as", "waistband: right"),
    "piece.fullness": ("Fullness", "times that edge: 1.5 light, 2 usual, 3 full", "2"),
    "piece.grain": ("Grain", "how its length lies on the fabric", "either"),
    "piece.sizes": ("Sizes", "cut if allowances are in already", "finished"),
    "piece.top": ("Top", "finished width at the top, of a taper; 0 for a point", "6"),
    "piece.bottom": ("Bottom", "finished width at the bottom, of a taper; 0 for a point", "14"),
    "piece.waist": ("Waist", "inner edge of this piece, of a sector; 0 for a point",
                    "from waist / 2"),
    "piece.share": ("Share", "of a circle, of a sector", "1/4"),
    "piece.ring": ("Ring", "finished length all round, of a joined strip", "46"),
    "piece.widths": ("Widths", "whole widths of the fabric, of a joined strip", "3"),
    "piece.underlap": ("Underlap", "how much longer than the edge it is sewn to", "1 1/4"),
    "piece.joined": ("Joined", "of a joined strip: empty is in the round", "open"),
    "piece.last_width": ("Last width", "of a joined strip: whole, or only what is needed", "part"),
    "piece.slant": ("Slant", "of a taper: which sides slant", "both sides"),
    "piece.seams": ("Seams", "of a sector too wide for the fabric", "as needed"),
    "cut.fabric": ("Fabric", "which of those that the piece is cut from", "interfacing"),
    "cut.cut_to": ("Cut to", "finished size: without allowances", "finished size"),
    "cut.quantity": ("Quantity", "if not that of the piece", "2"),
    "cut.width": ("Width", "if not that of the piece", "20"),
    "cut.length": ("Length", "if not that of the piece", "25"),
    "cut.top": ("Top", "of a taper, if not that of the piece", "6"),
    "cut.bottom": ("Bottom", "of a taper, if not that of the piece", "14"),
    "cut.waist": ("Waist", "of a sector, if not that of the piece", "9"),
    "cut.grain": ("Grain", "if not that of the piece", "crosswise"),
    "cut.edges.top": ("Top edge", "empty: as the piece's own", "seam"),
    "cut.edges.bottom": ("Bottom edge", "", "hem 3/4 in"),
    "cut.edges.left": ("Left edge", "", "seam"),
    "cut.edges.right": ("Right edge", "", "seam"),
    "edge.edges": ("Edge", "your name for it", "neckline"),
    "edge.finish": ("Finish", _EDGE, "faced"),
    "edge.length": ("Length", "finished", "15"),
    "edge.curve": ("Curve", "by what part of a circle it turns, for rows beside it", "hollow 1/2"),
    "takeup.kind": ("Kind", "", "tuck"),
    "takeup.depth": ("Depth", "of one fold; of a dart what it takes in", "1/2"),
    "takeup.count": ("Count", "how many", "2"),
    "takeup.across": ("Across", "what they make smaller: width or length", "length"),
    "width.width": ("Width", "as sold", "44 in"),
    "width.usable": ("Usable", "between the selvedges", "43 in"),
    "width.bolt": ("Bolt", "the longest length in one piece", "15 yd"),
    "width.price": ("Price", "with what it is for", "7.50 per yd"),
    # seams
    "seam.name": ("Name", "only where a trim follows it", "waist seam"),
    "seam.edges.0": ("One side", "an edge, or several end to end with ; between",
                     "waistband: right"),
    "seam.edges.1": ("Other side", "what is sewn to it", "skirt panel: top"),
    "seam.gathered": ("Gathered", "which of them is gathered", "skirt panel: top"),
    "seam.allowance": ("Allowance", "if not as for the garment", "1"),
    "seam.stitch": ("Stitch", "", "lockstitch"),
    # trims, elastics, notions
    "trim.name": ("Name", "", "hem ribbon"),
    "trim.along": ("Along", "the edges that it follows with ; between, or a seam's name",
                   "skirt panel: bottom"),
    "trim.length": ("Length", "finished, only if it follows no edge", "40"),
    "trim.rows": ("Rows", "", "2"),
    "trim.joined": ("Joined", "in the round, or open", "in the round"),
    "trim.run": ("Run", "each: a run of its own on each edge", "each"),
    "trim.ends": ("Ends", "how they are finished: one for both, or two with ; between",
                  "in a seam; raw"),
    "trim.through": ("Through", "the trim through which it is drawn", "beading lace"),
    "trim.covers": ("Covers", "the cord that a strip covers", "piping cord"),
    "trim.row_spacing": ("Row spacing", "how far apart its rows are", "1"),
    "trim.from_edge": ("From edge", "how far inside the edge it runs", "2"),
    "trim.ease": ("Ease", "how much longer than its edge it is cut", "3 %"),
    "trim.corners": ("Corners", "how many it goes round", "4"),
    "trim.corner": ("Corner", "how a corner is made", "mitred"),
    "trim.measured": ("Measured", "along which of its edges", "inner edge"),
    "trim.bow": ("Bow", "what is added for a bow", "30"),
    "trim.overlapped": ("Overlapped", "how much of one repeat a round overlaps", "50 %"),
    "trim.ease_repeats": ("Ease repeats", "how much an edge may be eased for fewer repeats", "2 %"),
    "trim.motif": ("Motif", "where a motif is placed", "centred"),
    "trim.mirrored": ("Mirrored", "yes if the two sides mirror each other", "yes"),
    "trim.joins": ("Joins", "in how many places a run may be joined", "1"),
    "trim.cut_from": ("Cut from", "the fabric from which it is cut on the bias", "print"),
    "trim.strip": ("Strip", "how wide that strip is cut", "2"),
    "pleats.depth": ("Depth", "of one pleat", "1/2"),
    "pleats.kind": ("Kind", "", "box pleat"),
    "pleats.spacing": ("Spacing", "from one to the next; empty is close together", "2"),
    "elastic.kind": ("Kind", "", "woven"),
    "elastic.opening": ("Opening", "as finished, if no body measure is known", "30"),
    "elastic.casing": ("Casing", "the edge whose casing it runs in", "skirt: top"),
    "fibres": ("Fibres", "", "cotton"),
    "care": ("Care", "what its label says", "wash at 40 °C"),
    "trim.fullness": ("Fullness", "of a trim that is gathered", "1.5"),
    "trim.repeat": ("Repeat", "one scallop or motif", "1 3/4"),
    "trim.width": ("Width", "of the trim itself", "3/8"),
    "trim.overlap": ("Overlap", "where it is joined in the round", "1/2"),
    "elastic.name": ("Name", "", "waist elastic"),
    "elastic.measure": ("Measure", "of the body, not of the garment", "from waist"),
    "elastic.stretch": ("Stretch", "how much shorter it is cut", "10 %"),
    "elastic.overlap": ("Overlap", "where its ends are sewn together", "1"),
    "elastic.width": ("Width", "of the elastic itself", "3/4"),
    "elastic.joined": ("Joined", "", "in the round"),
    "elastic.rows": ("Rows", "", "1"),
    "notion.name": ("Name", "", "back zip"),
    "notion.quantity": ("Quantity", "", "1"),
    "notion.spare": ("Spare", "for all copies together", "1"),
    "notion.kind": ("Kind", "where no catalog says it", "zip"),
    "notion.length": ("Length", "of the opening that a zip closes", "7"),
    "notion.size": ("Size", "of a button, across", "5/8"),
    "notion.thickness": ("Thickness", "of a button", "1/8"),
    "notion.along": ("Along", "the edges along which they are spread, with ; between",
                     "1 x front: right"),
    "notion.over": ("Over", "the distance over which they are spread", "21"),
    "notion.apart": ("Apart", "how far apart they are at most", "3"),
    "notion.from_ends": ("From ends", "how far the first and the last are from the ends", "1"),
    "notion.ends_of": ("Ends of", "the bones for whose ends they are, two each", "bones"),
    "trim.stitched": ("Stitched", "rows of stitching that hold it on", "2"),
    "trim.casing": ("Casing", "the edge in whose casing it runs", "pouch: top"),
    "lacing.along": ("Along", "the edge that is laced", "1 x back: left"),
    "lacing.length": ("Length", "of the opening, if it is no edge", "12"),
    "lacing.apart": ("Apart", "how far apart the eyelets of one side are", "1"),
    "lacing.pairs": ("Pairs", "of eyelets, if not told by how far apart", "8"),
    "lacing.gap": ("Gap", "how far the sides stand apart at most", "2"),
    "lacing.from_ends": ("From ends", "how far the first eyelet is from the end", "1/2"),
    "lacing.tie": ("Tie", "what each end has left to tie", "10"),
    "boning.along": ("Along", "the edge along which the channel runs", "1 x front: left"),
    "boning.length": ("Length", "of each channel, if it is no edge", "9"),
    "boning.casing_for": ("Casing for", "the bones whose channels it makes", "bones"),
    "boning.clear": ("Clear", "by how much a bone ends short of its channel", "1/4"),
    "boning.shorter": ("Shorter", "by how much one sold ready cut may be shorter", "1/2"),
    "loops.buttons": ("Buttons", "the notion whose buttons they hold; it states its size",
                      "front buttons"),
    "thread.name": ("Name", "", "thread"),
    "thread.sews": ("Sews", "seams, hems, trims, gathering, overedging, or names of seams and "
                    "trims, with ; between; empty is all the rest", "hems; hem ribbon"),
    "thread.stitch": ("Stitch", "", "lockstitch"),
    "thread.thickness": ("Thickness", "of the seams, with the stitches", "1/16"),
    "thread.stitches": ("Stitches", "with the thickness of the seams", "10 per in"),
    "thread.weight": ("Weight", "as its spool says", "50"),
    "fabric.fibres": ("Fibres", "", "cotton"),
    "fabric.care": ("Care", "what its label says", "wash at 40 °C"),
    "fabric.fusible": ("Fusible", "yes if it is ironed on", "yes"),
    "fabric.knit": ("Knit", "yes if it is knitted", "no"),
    "fabric.weight": ("Weight", "sheer to very heavy", "medium"),
    "cut.shorter": ("Shorter", "than the piece, as a lining hangs", "1"),
    "cut.longer": ("Longer", "than the piece", "1"),
    "cut.trimmed": ("Trimmed", "cut off all round, as of interfacing", "1/8"),
    "cut.pieced": ("Pieced", "overlap of parts, if it may be cut in parts", "1/2"),
    "garment.use": ("Use", "for the cautions on the list", "stage"),
    "garment.tie": ("Tie", "what a lace has left at each end to tie", "10"),
    "garment.bone_clear": ("Bone clear", "by how much a bone ends short of its channel", "1/4"),
    "garment.thread_waste": ("Thread waste", "what to buy over of thread", "15 %"),
    "garment.gathering_rows": ("Gathering rows", "of stitching where an edge is gathered", "2"),
    "sold.put_up": ("Pack", "each, pack of 6, card of 3 yd, spool of 25 m", "card of 3 yd"),
    "sold.length": ("Length", "of one that is sold by number, as a zip or a lace", "20 in"),
    "sold.price": ("Price", "of one pack", "2.40 each"),
}  # fmt: skip


def words_of(table: str, path: tuple[str | int, ...]) -> Words:
    """The words for a key of a table (``piece``, or the name of a nested one: ``takeup``)."""
    key = ".".join(map(str, path))
    found = _WORDS.get(f"{table}.{key}") or _WORDS.get(key)
    return Words(*found) if found else Words(key.replace("_", " ").replace(".", " ").capitalize())


def title_of(*keys: str) -> str:
    """The title of the sheet of a table, or of the entries of one of its keys."""
    found = TITLES.get(".".join(keys)) or (TITLES.get(keys[-1]) if len(keys) > 1 else None)
    return found or " ".join(keys).replace("_", " ").capitalize()[:31]


COMMON = {
    "piece": ("name", "cut", "quantity", "width", "length", "edges.top", "edges.bottom",
              "edges.left", "edges.right", "made", "onto", "fullness", "shape", "grain"),
    "fabric": ("name", "role", "buy", "colour", "widths", "shrinkage", "nap", "price"),
    "trim": ("name", "along", "length", "joined", "rows", "quantity", "width", "buy", "colour",
             "price"),
    "elastic": ("name", "measure", "width", "stretch", "quantity", "buy", "price"),
    "notion": ("name", "quantity", "spare", "length", "kind", "buy", "colour", "price"),
    "lacing": ("name", "along", "length", "apart", "pairs", "gap", "tie", "buy", "colour", "price"),
    "boning": ("name", "length", "quantity", "along", "casing_for", "buy", "price"),
    "loops": ("name", "buttons", "width", "buy", "colour", "price"),
    "thread": ("name", "sews", "stitch", "buy", "colour", "price"),
    "cut": ("fabric", "cut_to", "shorter", "longer", "trimmed", "quantity", "width", "length"),
    "seam": ("name", "edges.0", "edges.1", "gathered", "allowance", "stitch"),
}  # fmt: skip
"""The columns that most people need, in the order in which they stand first."""

USUAL = {"trim.ends": ("turned under", "raw", "in a seam", "folded back")}
"""What is usual in a column that takes other texts as well."""
CHOICES = {"notion.kind": ("zip", "separating zip", "thread", "notion")}
"""Choices that are fewer than the words which the key's type knows."""
