"""Settings of the whole suite."""

from hypothesis import Phase, settings

# The same draws each run, no clock in the verdict, and no search for an explanation that would hide a failure for minutes.
settings.register_profile(
    "suite", derandomize=True, deadline=None, phases=(Phase.explicit, Phase.generate, Phase.shrink)
)
settings.load_profile("suite")
