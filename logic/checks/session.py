"""A checklist under way on a board: every step is on the disk before the next item is shown."""

from collections.abc import Iterable, Mapping
from dataclasses import replace

from logic.checks.lists import Checklist, Item
from logic.checks.open_faults import OpenFault
from logic.checks.run import (
    Answer,
    ChecklistRun,
    answered,
    back_one,
    begin,
    fit,
    go_to,
    how_old,
    pause_of,
    resumed,
    run_from_dict,
    run_to_dict,
)
from logic.checks.verdict import Fitness, PutOff, Verdict, check_entry, fitness, verdict
from logic.errors import UNREADABLE
from logic.log.checks import UNFINISHED
from logic.store import Clock, Store


def run_under_way(store: Store, board: str, of: str) -> ChecklistRun | None:
    """Return a checklist in progress; None when there is none. One that cannot be read is set aside."""
    saved = store.run(board, of)
    if saved is None:
        return None
    try:
        return run_from_dict(saved.body)
    except UNREADABLE:
        store.set_aside("run", f"{board}/{of}", store.run_text(board, of))
        return None


class Session:
    """One list on one board. `run` is None until it is begun; what the store holds is taken up again."""

    def __init__(self, store: Store, board: str, of: Checklist, clock: Clock) -> None:
        """Take up what is saved of a list that is fitted to the board."""
        self.store, self.board, self.of, self._clock = store, board, of, clock
        saved = run_under_way(store, board, of.key)
        self.run: ChecklistRun | None = None if saved is None else fit(saved, of)

    @property
    def age(self) -> str:
        """Return "none", or how long ago the run was left: "fresh", "stale" or "lapsed"."""
        return "none" if self.run is None else how_old(self.run, self.of, self._clock())

    @property
    def verdict(self) -> Verdict:
        """Return what the run shows now."""
        return verdict(self.under_way, self.of)

    @property
    def under_way(self) -> ChecklistRun:
        """Return the run, which must have been begun."""
        if self.run is None:
            raise RuntimeError("no run is under way")
        return self.run

    def minutes_away(self) -> int:
        """Return how many whole minutes ago the last step was."""
        return int(pause_of(self.under_way, self._clock()).total_seconds() // 60)

    def begin(self, faults: Iterable[OpenFault] = ()) -> None:
        """Begin anew; what is still open comes first, what forbids riding before the rest, then what was noted last time."""
        last = self.store.latest(self.board, "check", list=self.of.key)
        noted = last.body.noted if last is not None else ()
        known = sorted((one for one in faults if one.base == self.of.base), key=lambda one: not one.stops)
        self._save(begin(self.of, self._clock(), tuple(dict.fromkeys([*(one.key for one in known), *noted]))))

    def noted_before(self, item: Item, faults: Iterable[OpenFault] = ()) -> str:
        """Return what is still open of an item, or was noted at the last run in the log, "" for nothing."""
        known = [one.note for one in faults if (one.base, one.key) == (self.of.base, item.key)]
        if known:
            return known[-1]
        last = self.store.latest(self.board, "check", list=self.of.key)
        if last is None or item.key not in last.body.noted:
            return ""
        return str(dict(last.body.notes).get(item.action, ""))

    def resume(self) -> None:
        """Go on where the run was left, the gap noted."""
        self._save(resumed(self.under_way, self._clock()))

    def answer(
        self, item: str, state: str, note: str = "", value: float | str | None = None, sign: str = ""
    ) -> None:
        """Answer the item in front. Raises InputError for what an item does not allow."""
        said = Answer(state, self._clock().isoformat(), note.strip(), value, sign)
        self._save(answered(self.under_way, self.of.item(item), said))

    def back(self) -> None:
        """Put the item before in front, its answer taken back."""
        self._save(back_one(self.under_way, self._clock()))

    def go_to(self, item: str) -> None:
        """Put a chosen item in front, its answer taken back."""
        self._save(go_to(self.under_way, item, self._clock()))

    def fitness(self, held: str = "", put_off: PutOff = (), elsewhere: Iterable[str] = ()) -> Fitness | None:
        """Return what a check before a ride ends in, None for other lists."""
        return fitness(self.under_way, self.of, held, put_off, elsewhere)

    def finish(
        self,
        board: Mapping[str, float | str],
        held: str = "",
        put_off: PutOff = (),
        elsewhere: Iterable[str] = (),
    ) -> int:
        """Log what came of the run with the board's values and forget the run. Return the row.

        `held` is what forbids riding whatever the list found, `put_off` what else was due and the reason why
        it waits, `elsewhere` what other lists noted and is still open.
        """
        check = check_entry(self.under_way, self.of, board, held, put_off, elsewhere)
        row = self.store.finish_run(self.board, self.of.key, check)
        self.run = None
        return row

    def give_up(self, board: Mapping[str, float | str]) -> int | None:
        """End a broken-off run: what was answered is logged as not finished, no answers leave no trace."""
        run = self.under_way
        if run.answers:
            check = replace(check_entry(run, self.of, board), verdict=UNFINISHED)
            row = self.store.finish_run(self.board, self.of.key, check)
            self.run = None
            return row
        self.store.drop_run(self.board, self.of.key)
        self.run = None
        return None

    def _save(self, run: ChecklistRun) -> None:
        self.store.save_run(self.board, self.of.key, run_to_dict(run))
        self.run = run
