"""Graphics lost and found: the page is there again when the app comes back."""

from pathlib import Path

from PIL import Image, ImageChops

from tests.alone import NEEDS_GRAPHICS, alone


@NEEDS_GRAPHICS
def test_a_page_is_painted_anew_when_the_phone_took_its_graphics_and_can_be_handed_on_as_a_picture(
    tmp_path: Path,
) -> None:
    done = alone(tmp_path, "-m", "tests.phone.lost", str(tmp_path))
    assert done.returncode == 0, done.stderr
    assert (tmp_path / "before.png").read_bytes() == (tmp_path / "after.png").read_bytes()
    shot, page = (Image.open(tmp_path / name).convert("RGB") for name in ("after.png", "page.png"))
    assert shot.size == page.size
    assert ImageChops.difference(shot, page).getbbox() is None
