#pragma once

#include <string_view>

namespace engine {

/// A number that is taken as fixed: its value, the range in which publications, measurements or judgement
/// have it, its unit and where it comes from. A range of one point belongs to a definition, or to the
/// threshold of a rule that is known with that number alone.
///
/// The tables are `engine/ROOM/constants_*.h`: one a process of the physics, and one a room of the rules that
/// judge runs, plans and readings (run, plan, follow_up). Numbers that a run draws or a pond file may give
/// are in `engine/water/priors.h`. Where a publication has another number than the one in use, the source
/// says so. "From memory" means that the publication was not at hand when the number was written down,
/// "second hand" that it was read as others quote it. Coefficients of a published fit hold only together and
/// have no ranges: they stand in the one function that evaluates the fit, with its source and accuracy.
struct Constant {
    double value = 0.0;
    double low = 0.0;
    double high = 0.0;
    std::string_view unit;
    std::string_view source;
};

}  // namespace engine
