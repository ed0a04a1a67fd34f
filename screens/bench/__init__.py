"""Where the board is built and set."""

PAGES = {
    "bench": "screens.bench.home.BenchHome",
    "bench.controller": "screens.bench.controller.ControllerPage",
    "bench.power": "screens.bench.power.PowerPage",
    "bench.belt": "screens.bench.belt.SetBelt",
    "bench.positions": "screens.bench.positions.PositionsPage",
    "bench.pulls": "screens.bench.pulls.PullsPage",
    "bench.weight": "screens.bench.loads.WeightPage",
    "bench.motor": "screens.bench.loads.MotorPage",
    "bench.sound": "screens.bench.sound.SoundPage",
    "bench.wav": "screens.bench.wav.WavPage",
    "bench.together": "screens.bench.together.TogetherPage",
    "bench.saved": "screens.bench.saved.BenchSaved",
    "bench.wear": "screens.bench.wear.WearPage",
    "bench.wear_sign": "screens.bench.wear.WearSign",
    "bench.view": "screens.bench.view.BenchView",
    "bench.build": "screens.bench.build.BuildPage",
    "bench.faults": "screens.bench.faults.FaultsPage",
    "bench.fault": "screens.bench.fault.FaultPage",
    "bench.spares": "screens.bench.spares.SparesPage",
}
"""Class of each page by its name; it is imported at the first visit."""
