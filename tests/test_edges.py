"""Finishes of edges and the names of edges are read in one place, or refused with a remedy."""

import pytest

from estimator.edges import EdgeFinish, EdgeRef, Finish, allowance, read_edge_ref, read_finish
from estimator.measure import Unit
from estimator.quoting import NotReadable
from estimator.rules import IMPERIAL, METRIC
from estimator.written import length


@pytest.mark.parametrize(
    ("written", "read"),
    [
        ("seam", EdgeFinish(Finish.SEAM)),
        ("seam 3/8", EdgeFinish(Finish.SEAM, length("3/8"))),
        ("seam 0", EdgeFinish(Finish.SEAM, length("0"))),
        ("hem 1 1/4", EdgeFinish(Finish.HEM, length("1 1/4"))),
        ("Hem 1¼\"", EdgeFinish(Finish.HEM, length("1 1/4"))),
        ("hem 3 cm double", EdgeFinish(Finish.HEM, length("3 cm"), double=True)),
        ("hem 1 1/4 + 1/2", EdgeFinish(Finish.HEM, length("1 1/4"), length("1/2"))),
        ("hem 1 1/4+0", EdgeFinish(Finish.HEM, length("1 1/4"), length("0"))),
        ("casing 7/8", EdgeFinish(Finish.CASING, length("7/8"))),
        ("rolled hem", EdgeFinish(Finish.ROLLED)),
        ("narrow rolled hem 3/16", EdgeFinish(Finish.ROLLED, length("3/16"))),
        ("turned under", EdgeFinish(Finish.TURNED)),
        ("overlocked 1/8", EdgeFinish(Finish.SERGED, length("1/8"))),
        ("facing", EdgeFinish(Finish.FACED)),
        ("  fold ", EdgeFinish(Finish.FOLD)),
        ("selvedge", EdgeFinish(Finish.SELVEDGE)),
        ("raw", EdgeFinish(Finish.RAW)),
    ],
)  # fmt: skip
def test_a_finish_is_read_as_a_dressmaker_writes_it(written: str, read: EdgeFinish) -> None:
    assert read_finish(written, Unit.IN) == read


@pytest.mark.parametrize(
    ("written", "told"),
    [
        ("hem", "the hem states no depth; write it like hem 1 1/4"),
        ("casing", "the casing states no depth; write it like casing 1 1/4"),
        ("hem 0", "'hem 0' has no depth; write raw for an edge left as cut"),
        ("fold 1", "'fold 1' states a depth; write fold alone"),
        ("raw 1/4", "'raw 1/4' states a depth; write raw alone"),
        ("seam 1/2 double", "'seam 1/2 double' says more than a seam has; write seam 1/4"),
        ("hem 1 + 1/4 double", "'hem 1 + 1/4 double' is both double and with a turn-under; "
         "write the one that is meant"),
        ("selvege", "'selvege' is not a way to finish an edge; did you mean 'selvedge'?"),
        ("hemmed 1", "'hemmed 1' is not a way to finish an edge; did you mean 'hem'?"),
        ("hem 1 kg", "'kg' in '1 kg' measures mass, not a length; "
         "use in, ft, yd, mm, cm, m or ligne"),
        ("hem -1", "'-1' is negative; a length is zero or more"),
    ],
)  # fmt: skip
def test_a_finish_that_makes_no_sense_is_refused_with_its_remedy(written: str, told: str) -> None:
    with pytest.raises(NotReadable) as refused:
        read_finish(written, Unit.IN)
    assert str(refused.value) == told


@pytest.mark.parametrize(
    ("written", "imperial", "metric"),
    [
        # The house defaults: seam 5/8 in or 1.5 cm, turn-under 1/4 in or 0.6 cm.
        ("seam", "5/8 in", "1.5 cm"),
        ("faced", "5/8 in", "1.5 cm"),
        ("turned under", "1/4 in", "0.6 cm"),
        ("rolled hem", "1/4 in", "0.6 cm"),
        ("serged", "1/4 in", "0.6 cm"),
        ("hem 2 in", "2 1/4 in", "5.68 cm"),
        ("hem 2 in double", "4 in", "4 in"),
        ("fold", "0 in", "0 cm"),
    ],
)
def test_the_house_allowances_of_each_finish(written: str, imperial: str, metric: str) -> None:
    finish = read_finish(written, Unit.IN)
    assert allowance(finish, IMPERIAL) == length(imperial)
    assert allowance(finish, METRIC) == length(metric)


@pytest.mark.parametrize(
    ("written", "read"),
    [
        ("skirt panel: bottom", EdgeRef("skirt panel", "bottom")),
        ("2 x skirt panel: bottom", EdgeRef("skirt panel", "bottom", 2)),
        ("2x skirt panel:bottom", EdgeRef("skirt panel", "bottom", 2)),
        ("12 × gore: left", EdgeRef("gore", "left", 12)),
        ("front: neck line", EdgeRef("front", "neck line")),
        ({"piece": "gore", "edge": "left"}, EdgeRef("gore", "left")),
        ({"piece": "gore", "edge": "left", "count": 3}, EdgeRef("gore", "left", 3)),
    ],
)
def test_an_edge_is_named_by_its_piece_and_how_many_are_meant(
    written: object, read: EdgeRef
) -> None:
    assert read_edge_ref(written) == read


@pytest.mark.parametrize(
    "written",
    ["skirt", ": bottom", "skirt:", "a: b: c", "0 x skirt: bottom", 3, {"piece": "gore"},
     {"piece": "gore", "edge": "left", "cuont": 2}, {"piece": "gore", "edge": "left", "count": 0},
     {"piece": "gore", "edge": "left", "count": True}],
)  # fmt: skip
def test_what_names_no_edge_is_refused_with_an_example(written: object) -> None:
    with pytest.raises(NotReadable, match='write it like "skirt panel: bottom" or "2 x skirt'):
        read_edge_ref(written)


def test_an_edge_prints_as_it_is_written() -> None:
    assert str(EdgeRef("skirt panel", "bottom", 2)) == "skirt panel: bottom"


@pytest.mark.parametrize("written", [["skirt: bottom"], 3, True])
def test_one_edge_is_written_without_brackets(written: object) -> None:
    with pytest.raises(NotReadable, match='"2 x skirt panel: bottom", without brackets'):
        read_edge_ref(written)


def test_the_names_of_a_piece_and_its_edge_are_text() -> None:
    with pytest.raises(NotReadable, match="piece and edge of an edge are not both text"):
        read_edge_ref({"piece": ["skirt"], "edge": "bottom"})
