"""What every test shares: hypothesis profiles, and which database a run is on."""

import os

from hypothesis import HealthCheck, settings

settings.register_profile("small", max_examples=50, deadline=None, suppress_health_check=[HealthCheck.too_slow])
settings.register_profile("proof", max_examples=1000, deadline=None, suppress_health_check=list(HealthCheck))
settings.load_profile(os.environ.get("HYPOTHESIS_PROFILE", "small"))
