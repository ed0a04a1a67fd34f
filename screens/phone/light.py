"""The phone's light, for a check in the dark. Android asks for no leave to switch it."""

from screens.phone.java import activity, amiss, cast, java, on_android
from screens.tongue import _

NO_LIGHT = _("This phone has no light that can be switched on here.")

_lit: dict[str, str] = {}
"""The camera whose light is on."""


def is_on() -> bool:
    """Tell whether it was switched on here."""
    return bool(_lit)


def switch(*, on: bool) -> str:
    """Switch the light; return "" or the sentence that says why not."""
    if not on_android():
        return NO_LIGHT
    names = []
    with amiss("no light"):
        context = java("android.content.Context")
        cameras = cast(
            "android.hardware.camera2.CameraManager", activity().getSystemService(context.CAMERA_SERVICE)
        )
        names = [_lit["camera"]] if _lit else list(cameras.getCameraIdList())
        _lit.clear()
    for name in names:
        # A camera without a light refuses; the next one is tried.
        with amiss(f"camera {name} gives no light"):
            cameras.setTorchMode(name, on)
            if on:
                _lit["camera"] = name
            return ""
    return NO_LIGHT
