"""The sums of each line, and those below: parts of the shop, tax, what the budget leaves."""

from __future__ import annotations

from collections.abc import Sequence

from openpyxl.cell.cell import Cell
from openpyxl.styles import Protection
from openpyxl.worksheet.worksheet import Worksheet

from estimator.bill import Funds
from estimator.prices import decimals_of
from estimator.reports.buyers_list.columns import (
    BUDGET,
    CHARGE_MARK,
    CONTINGENCY,
    DONE,
    IN_ALL,
    LAST_PRINTED,
    LEFT,
    LETTER_OF,
    NUMBER_OF,
    OTHER,
    PARTS,
    SPENT,
    SUM_MARK,
    TAX,
    TOTAL,
    UNPRICED,
)
from estimator.reports.cells import (
    BAND,
    GREY,
    HAIR,
    HEAD,
    PLAIN,
    RIGHT,
    SMALL,
    TO_FILL_IN,
    WHOLE,
    WRAPPED,
    cell_at,
    money_format,
    put_text,
    rounded,
)
from estimator.reports.printing import Rows
from estimator.reports.row_heights import fit_height
from estimator.shops import Visit

SHARE = "0.###%"
_PLANNED, _PAID, _DIFFERENCE = "Cost", "Paid", "Difference"


def write_sums(
    sheet: Worksheet, rows: Rows, currency: str, funds: Funds, visits: Sequence[Visit] = ()
) -> dict[str, int]:
    """The sums of the lines in ``rows``, as live formulas below them; the row of each by its key.

    What the ``visits`` cost comes before the total and is part of it, free of tax; one without a
    charge is no longer needed, and was written about. The sums refer
    to the whole column, so that sorted, filtered and added lines are all summed.
    """
    return _Sums(sheet, rows, currency, funds, visits).write()


class _Sums:
    def __init__(
        self,
        sheet: Worksheet,
        rows: Rows,
        currency: str,
        funds: Funds,
        visits: Sequence[Visit],
    ) -> None:
        self.sheet, self.currency, self.funds = sheet, currency, funds
        self.visits = visits
        self.first, self.last = rows
        self.row = self.last + 1
        self.row_of: dict[str, int] = {}
        self.decimals = decimals_of(currency)
        self.money = money_format(self.decimals)

    def write(self) -> dict[str, int]:
        """Line by line; amounts of nothing are not shown among the parts."""
        quiet = f"{self.money};-{self.money};;"
        for part in PARTS.values():
            title = part.split(" ", 1)[1]
            self._begin(SUM_MARK + part, f"{title} together", small=True)
            chosen = self._column("Part of the shop")
            for heading in (_PLANNED, _PAID):
                sums = f'=SUMIF({chosen},"{part}",{self._column(heading)})'
                self._amount(heading, sums, quiet, small=True)
        self._begin(OTHER, "Other things together", small=True)
        parts = [self.row_of[SUM_MARK + part] for part in PARTS.values()]
        for heading in (_PLANNED, _PAID):
            letter = LETTER_OF[heading]
            rest = f"SUM({self._column(heading)})-SUM({letter}{parts[0]}:{letter}{parts[-1]})"
            self._amount(heading, f"=ROUND({rest},{self.decimals})", quiet, small=True)
        self._charges()
        self._totals()
        for row in self.row_of.values():
            self.sheet.merge_cells(f"{LETTER_OF['Item']}{row}:{LETTER_OF['Needed']}{row}")
        return self.row_of

    def _charges(self) -> None:
        """What a visit to each shop costs; what was paid for it is for the buyer to fill in."""
        for visit in self.visits:
            key = CHARGE_MARK + visit.shop
            gone = "" if visit.charge else ", no longer needed"
            self._begin(key, f"{visit.shop}: visit or delivery{gone}", small=True)
            self._amount(_PLANNED, "", self.money, small=True).value = visit.charge
            self._open(self._amount(_PAID, "", self.money, small=True))
            planned, paid = self._at(_PLANNED, key), self._at(_PAID, key)
            differs = f'=IF({paid}="","",ROUND({paid}-{planned},{self.decimals}))'
            self._amount(_DIFFERENCE, differs, self.money, small=True)

    def _charged(self, heading: str, sign: str) -> str:
        """The cells of the charges, each after a comma or a minus."""
        keys = (CHARGE_MARK + visit.shop for visit in self.visits)
        return "".join(f"{sign}{self._at(heading, key)}" for key in keys)

    def _totals(self) -> None:
        currency = f" ({self.currency})" if self.currency else ""
        self._begin(TOTAL, f"Total{currency}")
        for heading in (_PLANNED, _PAID, _DIFFERENCE):
            self._amount(
                heading, f"=SUM({self._column(heading)}{self._charged(heading, ',')})", self.money
            )
        for column in range(1, LAST_PRINTED + 1):
            cell_at(self.sheet, self.row_of[TOTAL], column).fill = BAND
        self._share(TAX, "Tax", self.funds.tax, (TOTAL,))
        for heading in (_PAID,):
            self._amount(heading, self._of_share(heading, TAX, (TOTAL,)), self.money)
        self._share(CONTINGENCY, "Contingency", self.funds.contingency, (TOTAL, TAX))
        self._begin(IN_ALL, "In all")
        self._amount(_PLANNED, self._added(_PLANNED, TOTAL, TAX, CONTINGENCY), self.money)
        self._amount(_PAID, self._added(_PAID, TOTAL, TAX), self.money)
        self._begin(BUDGET, "Budget")
        budget = self._amount(_PLANNED, "", self.money)
        budget.value = self.funds.budget
        self._open(budget)
        self._begin(SPENT, "Spent already")
        spent = self._amount(_PLANNED, "", self.money)
        spent.value = self.funds.spent
        self._open(spent)
        self._begin(LEFT, "Left of the budget, as planned and after what is paid")
        owed = f"{self.money};[Red]-{self.money}"
        for heading in (_PLANNED, _PAID):
            at, list_costs = self._at(_PLANNED, BUDGET), self._at(heading, IN_ALL)
            left = f"{at}-{list_costs}-{self._at(_PLANNED, SPENT)}"
            self._amount(heading, f'=IF({at}="","",{left})', owed)
        self._begin(UNPRICED, "Items without a price", small=True)
        items, buy, cost = (self._column(name) for name in ("Item", "Buy", _PLANNED))
        count = f'=SUMPRODUCT(({items}<>"")*({buy}<>0)*({cost}=""))'
        self._amount(_PLANNED, count, WHOLE, small=True)

    def _share(self, key: str, label: str, share: object, of: tuple[str, ...]) -> None:
        """A share that people may write, and what it comes to of the sums before it."""
        self._begin(key, label)
        cell = cell_at(self.sheet, self.row, NUMBER_OF["Price"])
        cell.value = None if share is None else float(share)  # type: ignore[arg-type]
        cell.number_format, cell.alignment, cell.font = SHARE, RIGHT, PLAIN
        self._open(cell)
        self._amount(_PLANNED, self._of_share(_PLANNED, key, of), self.money)

    def _of_share(self, heading: str, key: str, of: tuple[str, ...]) -> str:
        rate = f"${LETTER_OF['Price']}{self.row_of[key]}"
        whole = "+".join(self._at(heading, one) for one in of)
        if key == TAX:
            whole += self._charged(heading, "-")
        return f"={rounded(f'({whole})*{rate}', self.decimals)}"

    def _added(self, heading: str, *keys: str) -> str:
        return "=" + "+".join(self._at(heading, key) for key in keys)

    def _at(self, heading: str, key: str) -> str:
        return f"{LETTER_OF[heading]}{self.row_of[key]}"

    def _column(self, heading: str) -> str:
        letter = LETTER_OF[heading]
        return f"{letter}${self.first}:{letter}${self.last}"

    def _begin(self, key: str, label: str, *, small: bool = False) -> None:
        """A line with its label; the key is that by which the next list finds it."""
        self.row = self.last + 1 + len(self.row_of)
        self.row_of[key] = self.row
        cell = cell_at(self.sheet, self.row, NUMBER_OF["Item"])
        put_text(cell, label)
        cell.font, cell.alignment = (SMALL if small else HEAD), WRAPPED
        hidden = cell_at(self.sheet, self.row, NUMBER_OF["Key"])
        put_text(hidden, key)
        hidden.font = GREY
        note = cell_at(self.sheet, self.row, NUMBER_OF["Your notes"])
        note.protection, note.font, note.alignment = Protection(locked=False), PLAIN, WRAPPED
        for column in range(1, LAST_PRINTED + 1):
            cell_at(self.sheet, self.row, column).border = HAIR
        fit_height(self.sheet, self.row, NUMBER_OF["Needed"] - 1)

    def _amount(self, heading: str, formula: str, style: str, *, small: bool = False) -> Cell:
        cell = cell_at(self.sheet, self.row, NUMBER_OF[heading])
        cell.value = formula
        cell.number_format, cell.alignment = style, RIGHT
        cell.font = SMALL if small else HEAD
        return cell

    def _open(self, cell: Cell) -> None:
        cell.protection, cell.fill = Protection(locked=False), TO_FILL_IN


def line_formulas(row: int, decimals: int) -> dict[str, str]:
    """Cost, what was paid, and by how much that differs; each empty until it can be reckoned.

    What is ticked and says nothing else was bought as listed.
    """
    at = {heading: f"{letter}{row}" for heading, letter in LETTER_OF.items()}
    buy, price, cost, paid = at["Buy"], at["Price"], at["Cost"], at["Paid"]
    quantity, actual = at["Actual quantity"], at["Actual price"]
    nothing = f'AND(COUNT({quantity},{actual})=0,{at["Got it"]}<>"{DONE}")'
    unpriced = f"COUNT({price},{actual})=0"
    uncounted = f"COUNT({buy},{quantity})=0"
    paid_price = f"IF(COUNT({actual})=1,{actual},{price})"
    had = f"IF(COUNT({quantity})=1,{quantity},{buy})"
    return {
        "Cost": f'=IF(COUNT({buy},{price})<2,"",{rounded(f"{buy}*{price}", decimals)})',
        "Paid": f'=IF(OR({nothing},{unpriced},{uncounted}),"",'
        f"{rounded(f'{had}*{paid_price}', decimals)})",
        "Difference": f'=IF(COUNT({cost},{paid})<2,"",ROUND({paid}-{cost},{decimals}))',
    }
