# The rooms of the widgets, each with the rooms that it may include beside itself; only rooms above can be among them.
# widgets/CMakeLists.txt builds these folders, tests/layering.cmake holds who includes whom.
set(rooms
    "document:"
    "controls: document"
    "charts: document controls"
    "forms: document controls charts"
    "follow_up: document controls charts forms"
    # A library of its own, which the program and tests link.
    "papers: document controls charts")
