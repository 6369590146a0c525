# The rooms of the engine, each with the rooms that it may include beside itself; only rooms above can be among them.
# engine/CMakeLists.txt builds these folders, tests/layering.cmake holds who includes whom.
set(rooms
    "base:"
    "pond: base"
    "water: base pond"
    "column: base water"
    "ramps: base pond water"
    "run: base pond water column ramps"
    "ensemble: base pond water column ramps run"
    "plan: base pond water column ramps run ensemble"
    "follow_up: base pond water column ramps run ensemble plan"
    "advice: base pond water column ramps run ensemble plan follow_up"
    "wording: base pond water column ramps run ensemble plan follow_up advice"
    "intake: base pond water column ramps run ensemble plan follow_up advice wording"
    "output: base pond water column ramps run ensemble plan follow_up advice wording intake")
