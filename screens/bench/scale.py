"""By spring scale: at four wheel positions to one depth, or at several depths fitted together."""

from collections.abc import Iterator, Mapping
from typing import Any

from logic.answers.belt_bench import Positions, bench_plan, fitted_reading, positions
from logic.answers.reading import Item, Open, Result
from logic.answers.tension import BeltReading
from logic.board import Field
from screens.acts import Turn
from screens.bench.measure import Measure
from screens.bench.measuring import DEPTH, FORCE, asked_field
from screens.blocks import Block, Button, Picture
from screens.page import Foot
from screens.pictures.drive import drive
from screens.pictures.span import span_picture
from screens.showing import why
from screens.tongue import _, texts
from screens.trying import board_ask
from screens.ways import picture_if
from screens.words import label_of
from screens.words.belt import held_text
from screens.words.tension import aim_text, belt_name, scale_text

POSITIONS = 4
MOST_PULLS = 5
PARTS = ("best_depth", "best_pull", "best_error", "from_depth", "from_scale", "from_stiffness")
"""Figures of the depth, and of what its error is made."""


class Places(Measure):
    """One pull at each of four wheel positions, a quarter turn apart; the belt is set by the tightest."""

    way = "scale"
    heading = _("Set a belt")

    def title(self) -> str:
        """Return which belt is set."""
        return self.heading if len(self.sides) == 1 else belt_name(self.side)

    def prepare(self) -> None:
        """Work out the best depth: all pulls are made to it."""
        self.bench = self.world.kept(bench_plan, self.board, self.world.person)
        self.depth = self.plan.depth or 0.0
        self.found: Positions | None = None

    def asks(self) -> tuple[Field, ...]:
        """Return a pull for each place."""
        return tuple(
            asked_field(f"pull{number}", _("Place {number}").format(number=number), FORCE)
            for number in range(1, POSITIONS + 1)
        )

    @property
    def pulls(self) -> tuple[float, ...]:
        """Return the pulls that are there."""
        return tuple(float(self.values[field.key].si) for field in self.fields if field.key in self.values)

    def read(self) -> BeltReading | None:
        """Return the tightest of the places."""
        if not self.pulls or not self.depth:
            return None
        self.found = positions(self.board, self.world.person, self.pulls, self.depth)
        return self.found.tightest or self.found.readings[0]

    def picks_label(self) -> str:
        """Return what the numbers are, and how many there are."""
        return _("Places round the wheel, {unit}: {count} of {all}").format(
            unit=self.world.person.scale_unit, count=len(self.pulls), all=POSITIONS
        )

    def pick(self, field: Field) -> str:
        """Return the pull of a place alone, so that four stand in one row."""
        pull = self.number(field.key)
        if pull is None:
            return "–"
        return self.style.shown(pull, "force", unit=self.world.person.scale_unit).number

    def headline(self) -> tuple[str, str]:
        """Return how far to pull, and what the scale reads at the target."""
        item = self.plan.items["depth"]
        if self.lacked():
            return _("Which belt is it?"), why(item, self.style)  # type: ignore[arg-type]
        if isinstance(item, Open):
            return _("Not known yet"), why(item, self.style)
        depth = self.style.number(self.depth, "length")
        aim = aim_text(self.plan, self.style, self.world.person.scale_unit)
        return _("Pull {depth} aside").format(depth=depth), aim

    def reads(self) -> str:
        """Return the tightest pull beside the one at the target: all are made to one depth."""
        return scale_text(max(self.pulls), self.plan, self.style, self.world.person.scale_unit)

    def subject(self) -> str:
        """Return of how many places this is the tightest."""
        count = len(self.pulls)
        return _("Tightest of {count}:").format(count=count) if count > 1 else _("Here:")

    def provisional(self) -> str:
        """Return that other places may be tighter; a tight one is tight whatever the others are."""
        verdict = self.reading.verdict if self.reading is not None else None
        if verdict is None or verdict.word == "tight" or len(self.pulls) == POSITIONS:
            return ""
        return _("{count} of {all} places so far: the tightest counts.").format(
            count=len(self.pulls), all=POSITIONS
        )

    def foot(self) -> Foot:
        """Return the entry; from the first place on a belt can be saved as it is."""
        lacked = self.lacked()
        if lacked:
            return Foot(
                main=Button(_("Add: {value}").format(value=label_of(lacked).lower()), board_ask(lacked))
            )
        foot = super().foot()
        save = self.save()
        if save is None or len(self.pulls) == POSITIONS or self.next_field() is None or foot.main is None:
            return foot
        return Foot(main=foot.main, beside=(Button(_("Save so"), save),), entry=foot.entry)

    def lacked(self) -> str:
        """Return the value of the board without which no pull says anything, "" for none."""
        item = self.plan.items["depth"]
        return item.missing[0] if isinstance(item, Open) and item.missing else ""

    def instructions(self) -> str:
        """Return what to do with the hands."""
        if self.pulls:
            return texts("belt")["hands"]["again"]
        depth = self.style.number(self.depth, "length") if self.depth else _("a little")
        return super().instructions().format(depth=depth)

    def pictures(self) -> Iterator[Block]:
        """Yield where the span and the depth are measured."""
        drawn = span_picture(self.plan, self.style, self.world.person.scale_unit)
        text = _("A straight edge lies along the span. The hook pulls at its middle, to the depth.")
        yield Picture("span picture", drawn, text)

    def drawn(self) -> Iterator[Block]:
        """Yield the drive to scale."""
        right = self.side == "right"
        whole = drive(self.board, self.plan, self.style, self.world.person.scale_unit, mirrored=right)
        yield from picture_if("drive picture", whole, _("The drive to scale, with the free span."))

    def remarks(self) -> list[str]:
        """Return why this depth, and how far the tension moves round the wheel."""
        said = [held_text(self.plan, self.style)]
        if self.found is not None and isinstance(self.found.spread, Result) and len(self.pulls) > 1:
            moves = self.style.number(self.found.spread.value, "force")
            said.append(_("Round the wheel the tension moves by {force}.").format(force=moves))
        share = self.bench["best_share"]
        if isinstance(share, Result):
            said.append(
                _("One pull to this depth is good to {share}, mostly because of {part}.").format(
                    share=self.style.number(share.value, "share", 2), part=self._worst()
                )
            )
        return said

    def _worst(self) -> str:
        words = texts("belt")["worst"]
        return words[max(words, key=lambda name: getattr(self.bench[f"from_{name}"], "value", 0.0))]

    def figures(self) -> Mapping[str, Item]:
        """Return the tension to set, the depth, and what its error is made of."""
        shown = {name: item for name, item in self.plan.items.items() if name != "wrap"}
        shown |= {name: self.bench[name] for name in PARTS if name != "best_depth"}
        if self.found is not None and isinstance(self.found.spread, Result):
            shown["spread"] = self.found.spread
        return shown

    def own(self) -> dict[str, Any]:
        """Keep every pull, and the smallest tension beside the largest."""
        slackest = self.found.slackest.tension if self.found and self.found.slackest else None
        return {
            "pull": max(self.pulls),
            "pulls": self.pulls,
            "depth": self.depth,
            "least": slackest.value if isinstance(slackest, Result) else None,
        }


class Depths(Measure):
    """Two to five pulls at different depths, fitted for the tension and for where the depth's zero is."""

    way = "pulls"
    heading = _("Several pulls")

    def asks(self) -> tuple[Field, ...]:
        """Return a depth and a pull for each; another pair comes when all are filled."""
        typed = self.world.typed
        filled = sum(
            bool(
                typed.get(f"{self.way}/{self.side}/pull{n}") and typed.get(f"{self.way}/{self.side}/depth{n}")
            )
            for n in range(1, MOST_PULLS + 1)
        )
        count = min(max(2, filled + 1), MOST_PULLS)
        pairs = (
            (
                asked_field(f"depth{n}", _("Depth {number}").format(number=n), DEPTH),
                asked_field(f"pull{n}", _("Pull {number}").format(number=n), FORCE),
            )
            for n in range(1, count + 1)
        )
        return tuple(field for pair in pairs for field in pair)

    def _pulls(self) -> tuple[tuple[float, float], ...]:
        pairs = ((self.number(f"pull{n}"), self.number(f"depth{n}")) for n in range(1, MOST_PULLS + 1))
        return tuple((pull, depth) for pull, depth in pairs if pull is not None and depth is not None)

    def read(self) -> BeltReading | None:
        """Return what the pulls tell together."""
        pulls = self._pulls()
        self.found = fitted_reading(self.board, self.world.person, pulls) if len(pulls) > 1 else None
        return None if self.found is None else self.found.reading

    def remarks(self) -> list[str]:
        """Return what fitting gains, and whether the pulls belong together."""
        said = [
            _("Two pulls gain next to nothing over one good one. Five take about a fifth off the error."),
            held_text(self.plan, self.style),
        ]
        if self.found is not None and not self.found.agree:
            said.insert(0, _("These pulls do not belong to one belt: one was held, or read wrong."))
        return said

    def figures(self) -> Mapping[str, Item]:
        """Return the zero error."""
        return {} if self.found is None else {"zero": self.found.zero}

    def foot(self) -> Foot:
        """Return the entry. Two pulls are enough to save: a further pair is offered, not asked for."""
        ahead = self.next_field()
        if self.savable and ahead is not None and ahead.key.startswith("depth"):
            another = Button(_("Another depth"), Turn({"_at": ahead.key}))
            return Foot(main=self.save_bar(), beside=(another,), entry=self.entry)
        return super().foot()

    def own(self) -> dict[str, Any]:
        """Keep the pulls with their depths."""
        pulls = self._pulls()
        return {"pulls": pulls, "pull": pulls[0][0], "depth": pulls[0][1]}
