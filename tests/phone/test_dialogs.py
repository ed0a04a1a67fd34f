"""The dialog of a desktop: played by programs that answer as the real ones do, by memory of their pages of help."""

import os
import stat
import sys

import pytest

from screens.phone import dialogs, documents


@pytest.fixture
def desktop(monkeypatch, tmp_path):
    """Give a function that puts a program in the way of the system's own."""
    programs = tmp_path / "programs"
    programs.mkdir()
    monkeypatch.setenv("PATH", str(programs))
    monkeypatch.setenv("DISPLAY", ":9")
    monkeypatch.setattr(dialogs, "platform", "linux")
    monkeypatch.setattr(dialogs, "WAYS", {"linux": (dialogs._zenity, dialogs._kdialog)})  # noqa: SLF001

    def put(name: str, line: str) -> None:
        path = programs / name
        path.write_text(f"#!{sys.executable} -E\nimport sys, time\n{line}\n")
        path.chmod(path.stat().st_mode | stat.S_IEXEC)

    yield put
    dialogs.close()


def opened(tmp_path, until):
    told = []
    documents.Documents(tmp_path).open(lambda *answer: told.append(answer))
    until(lambda: told)
    return told[0]


def saved(tmp_path, until):
    path = tmp_path / "copies" / "log.csv"
    path.parent.mkdir(exist_ok=True)
    path.write_bytes(b"a,b\n")
    told = []
    documents.Documents(tmp_path).save(path, told.append)
    until(lambda: told)
    return told[0]


@pytest.mark.parametrize("name", ["zenity", "kdialog"])
def test_a_file_that_was_chosen_is_opened_where_it_lies(desktop, tmp_path, until, name):
    far = tmp_path / "far é.json"
    desktop(name, f"sys.stdout.buffer.write({os.fsencode(far)!r} + b'\\n')")
    assert opened(tmp_path, until) == (far, "")


def test_a_file_is_written_where_the_person_chose(desktop, tmp_path, until):
    far = tmp_path / "elsewhere" / "far.csv"
    far.parent.mkdir()
    desktop(
        "zenity", f"assert '--filename=log.csv' in sys.argv and '--save' in sys.argv; print({str(far)!r})"
    )
    assert saved(tmp_path, until) == "Written as far.csv in the folder elsewhere."
    assert far.read_bytes() == b"a,b\n"


def test_the_place_where_it_lies_already_is_a_place_as_well(desktop, tmp_path, until):
    desktop("zenity", f"print({str(tmp_path / 'copies' / 'log.csv')!r})")
    assert saved(tmp_path, until) == "Written as log.csv in the folder copies."
    assert (tmp_path / "copies" / "log.csv").read_bytes() == b"a,b\n"


def test_a_place_that_cannot_be_written_says_so(desktop, tmp_path, until):
    desktop("zenity", f"print({str(tmp_path / 'none' / 'far.csv')!r})")
    assert saved(tmp_path, until) == documents.NOT_WRITTEN


def test_who_chooses_none_is_told_nothing_and_a_file_that_is_written_stays(desktop, tmp_path, until):
    desktop("zenity", "sys.exit(1)")
    assert opened(tmp_path, until) == (None, "")
    assert saved(tmp_path, until) == "Saved as log.csv in the folder copies."


@pytest.mark.parametrize("line", ["sys.exit(255)", "print()"], ids=["status", "empty"])
def test_a_dialog_that_fails_leaves_the_ways_by_path_and_by_dropping(desktop, tmp_path, until, line):
    desktop("zenity", line)
    assert opened(tmp_path, until) == (None, documents.BY_PATH)
    assert saved(tmp_path, until) == "Saved as log.csv in the folder copies."


def test_a_mac_tells_a_dialog_that_may_not_be_shown_from_one_that_was_left(
    desktop, tmp_path, until, monkeypatch
):
    monkeypatch.setattr(dialogs, "platform", "macosx")
    monkeypatch.setattr(dialogs, "WAYS", {"macosx": (dialogs._mac,)})  # noqa: SLF001
    desktop("osascript", "sys.exit('execution error: User canceled. (-128)')")
    assert opened(tmp_path, until) == (None, "")
    desktop("osascript", "sys.exit('execution error: not allowed (-1743)')")
    assert opened(tmp_path, until) == (None, documents.BY_PATH)


def test_a_program_that_does_not_start_is_none(desktop, tmp_path, until):
    desktop("zenity", "")
    (tmp_path / "programs" / "zenity").write_text("#!/nowhere\n")
    assert opened(tmp_path, until) == (None, documents.BY_PATH)


@pytest.mark.parametrize(
    ("display", "name"), [("", "zenity"), (":9", "nothing")], ids=["no screen", "no program"]
)
def test_without_a_screen_or_a_program_there_is_none(desktop, tmp_path, until, monkeypatch, display, name):  # noqa: PLR0913
    desktop(name, "print('/never')")
    monkeypatch.setenv("DISPLAY", display)
    monkeypatch.delenv("WAYLAND_DISPLAY", raising=False)
    assert opened(tmp_path, until) == (None, documents.BY_PATH)
    assert saved(tmp_path, until) == "Saved as log.csv in the folder copies."


def test_while_one_is_shown_no_other_comes_and_it_goes_with_the_app(desktop, tmp_path):
    desktop("zenity", "time.sleep(60)")
    files = documents.Documents(tmp_path)
    told = []
    files.open(lambda *answer: told.append(answer))
    shown = dialogs._shown["it"]  # noqa: SLF001
    files.open(lambda *answer: told.append(answer))
    assert dialogs._shown["it"] is shown  # noqa: SLF001
    dialogs.close()
    assert shown.wait(5) != 0
    assert told == []


def test_other_systems_are_asked_in_their_own_words():
    assert dialogs._mac("") == ["osascript", "-e", "POSIX path of (choose file)"]  # noqa: SLF001
    assert 'default name "log.csv"' in dialogs._mac("log.csv")[-1]  # noqa: SLF001
    assert "OpenFileDialog" in dialogs._windows("")[-1]  # noqa: SLF001
    save = dialogs._windows("log.csv")[-1]  # noqa: SLF001
    assert "SaveFileDialog" in save
    assert "'log.csv'" in save
    assert "{ exit 1 }" in save
