"""A page of HTML on paper or as a PDF, by Android's own page for printing. A desktop writes a PDF instead: see `sheet.pdf`.

A view that nobody sees reads the page, without script or network; once it has, its content is handed to the printing service.
"""

from collections.abc import Callable
from typing import Any

from kivy.clock import Clock

from screens.phone.java import activity, amiss, cast, in_app, java, on_androids_thread
from screens.tongue import _

OPEN = _("The phone's page for printing comes. It also saves a PDF.")
NOT_HERE = _("This phone cannot print. Send the sheet with pictures to one that can.")

EVERY, LONGEST = 0.1, 10.0
"""Seconds between two looks at how far the page is read, and after which it is given up."""
READ = 100
"""Android's number of a page that is read."""

Told = Callable[[str], None]
"""Called in the app's own thread with what came of it."""


def hand(html: str, title: str, told: Told) -> None:
    """Open the phone's page for printing; on Android only."""
    _Printing(html, title, told).begin()


class _Printing:
    """Lives until the page is handed over or given up. All that touches the view is done on Android's thread."""

    def __init__(self, html: str, title: str, told: Told) -> None:
        self._html, self._title, self._told = html, title, told
        self._view: Any = None
        self._left = round(LONGEST / EVERY)
        self._over = False

    def begin(self) -> None:
        self._on_its_thread(self._read)

    def _on_its_thread(self, work: Callable[[], None]) -> None:
        def gone() -> None:
            self._end(NOT_HERE)

        def tried() -> None:
            with amiss("not printed", gone):
                work()

        with amiss("not printed", gone):
            on_androids_thread(tried)

    def _read(self) -> None:
        self._view = java("android.webkit.WebView")(activity())
        self._view.loadDataWithBaseURL(None, self._html, "text/html", "utf-8", None)
        # The clock alone would not keep this from going.
        in_app(lambda: Clock.schedule_interval(lambda *_: self._look(), EVERY))

    def _look(self) -> bool:
        """Look how far it is; return False when it is over, which ends the looking."""
        self._left -= 1
        if self._left < 0:
            self._end(NOT_HERE)
        if not self._over:
            self._on_its_thread(self._print)
        return not self._over

    def _print(self) -> None:
        if self._over or self._view.getProgress() < READ:
            return
        service = activity().getSystemService(java("android.content.Context").PRINT_SERVICE)
        if service is None:
            raise OSError("no printing service")
        content = self._view.createPrintDocumentAdapter(self._title)
        cast("android.print.PrintManager", service).print(self._title, content, None)
        self._end(OPEN)

    def _end(self, sentence: str) -> None:
        """Say what came of it, once. The view is held by its content as long as that is printed."""
        if not self._over:
            self._over = True
            in_app(lambda: self._told(sentence))
