#pragma once

#include "engine/pond/pond.h"

#include <string_view>

namespace engine {

/// A number that the pond file need not give: its value, its 5 and 95 % points and where it comes from.
struct Prior {
    double value = 0.0;
    double low = 0.0;
    double high = 0.0;
    std::string_view source;
};

// clang-format off
// Rates are per day or hour at 20 degC as their sources give them; the names say so. Units and words as in
// engine/water/constant.h.

// Light and growth
inline constexpr Prior kPhotosynthesis_mgPerMgHour{15.0, 8.0, 25.0,
    "mg O2 per mg chlorophyll and hour at 25 degC: fertile warm ponds 10 to 20, from memory"};
inline constexpr Prior kSaturationLight_umol{200.0, 100.0, 300.0,
    "umol/m2/s: fertile warm ponds 100 to 300, from memory"};
inline constexpr Prior kPhotosynthesisTheta{1.066, 1.05, 1.08, "Eppley (1972)"};
inline constexpr Prior kNearInfraredShare{0.55, 0.50, 0.58,
    "what the light of plants (kParShare) leaves of shortwave, most of it infrared; 0.45 in Dake and Harleman "
    "(1969), from memory"};
inline constexpr Prior kNearInfraredAttenuation{6.0, 3.0, 12.0,
    "1/m: about 95 % gone in the top half metre; judgement"};
inline constexpr Prior kAlbedo{0.07, 0.05, 0.10, "daily mean of open water, from memory"};
inline constexpr Prior kWeedPhotosynthesis_mgPerGHour{4.0, 1.5, 8.0,
    "mg O2 per g dry mass and hour in full light at 20 degC; judgement"};
inline constexpr Prior kWeedRespiration_mgPerGHour{0.8, 0.3, 1.6,
    "mg O2 per g dry mass and hour at 20 degC; judgement"};
inline constexpr Prior kWeedMass_gPerM2{200.0, 100.0, 350.0, "dry mass at full cover; judgement"};
inline constexpr Prior kWeedShading_m2PerG{0.02, 0.01, 0.04, "light attenuation; judgement"};

// Respiration
inline constexpr Prior kRespirationBase_mgPerLHour{0.01, 0.004, 0.03,
    "mg/L/h without algae at 20 degC, from memory of clear lakes. 0.04 of pond literature, from memory, is five "
    "times what the bottom water of Falling Creek Reservoir leaves for it (computed from its published "
    "profiles): what ponds breathe beyond this goes with their algae"};
inline constexpr Prior kRespirationPerChlorophyll{0.0014, 0.0007, 0.0028,
    "mg/L/h per ug/L of chlorophyll at 20 degC; consolidated from pond literature, from memory. In lakes "
    "production exceeds plankton respiration only above 17 ug/L, del Giorgio and Peters (1993), Can. J. "
    "Fish. Aquat. Sci. 50:282"};
inline constexpr Prior kRespirationTheta{1.06, 1.04, 1.07,
    "Q10 of 1.5 to 2.0 for pond water at 15 to 35 degC, Boyd (1973), Trans. Am. Fish. Soc. 102:606-611"};
inline constexpr Prior kBreathedAtOnce{0.10, 0.05, 0.25,
    "of what algae make; from memory. 10 to 60 % with what they keep up, Geider (1992), of which the rest is "
    "below"};
inline constexpr Prior kMaintenance_perDay{0.05, 0.02, 0.10, "of living algae at 20 degC, from memory"};
inline constexpr Prior kLabileRate_perDay{0.2, 0.1, 0.3,
    "labile matter of water at 20 degC: dead plankton of four Danish lakes loses 67 to 78 % in 4 to 6 days, "
    "Hansen, Krog and Sondergaard (1986), Oikos 46:37-44; labile algae 0.13 a day, Fujii and others (2002), J. "
    "Oceanogr. 58:433"};
inline constexpr Prior kSettling_mPerDay{0.1, 0.05, 0.5,
    "m a day: algae 0.1 to 0.5, detritus 0.2 to 2, from memory"};
inline constexpr Prior kMudRate_perDay{0.035, 0.015, 0.07, "labile matter on the sediment at 20 degC, from memory"};
inline constexpr Prior kMudTheta{1.08, 1.06, 1.10, "of its decay, from memory"};
inline constexpr Prior kMostLabileMud{0.7, 0.5, 0.9,
    "of the sediment's demand at the start that labile matter can make up; judgement"};
inline constexpr Prior kMostSettling_mPerDay{0.5, 0.3, 1.0,
    "m a day, to which settling rises where more is made than used; judgement"};
inline constexpr Prior kLabileBelow{0.7, 0.3, 1.0, "labile matter at the start, below over above z_b; judgement"};
inline constexpr Prior kOxygenOfChlorophyll{0.1, 0.065, 0.16,
    "mg O2 per ug of chlorophyll: 0.98 to 1.29 mg per mg of dry mass, Boyd (1973), with 1 % of it "
    "chlorophyll (0.8 to 1.5 % for the range)"};
inline constexpr Prior kWeedsGive{0.5, 0.3, 0.7,
    "of what weeds make, not kept; only until the usual day is balanced; judgement"};
inline constexpr Prior kBenthic_mgPerM2Hour{60.0, 15.0, 150.0,
    "mg O2 per m2 of lit bed and hour at 20 degC in ample light, from memory of algae on lake beds"};
inline constexpr Prior kFeedWaste{0.45, 0.3, 0.7,
    "g O2 per g of feed that fish leave as waste, from memory of Boyd and Tucker (1998)"};
inline constexpr Prior kFeedNitrogen{0.16, 0.10, 0.22,
    "g O2 per g of feed for its ammonium: 32 % protein, of whose nitrogen 70 % is given off, times 4.57"};
inline constexpr Prior kBubblingOut_perHour{0.5, 0.2, 2.0,
    "of oxygen above what its gases' pressure holds; judgement"};
inline constexpr Prior kBubblingPressure{0.3, 0.15, 0.4,
    "of an atmosphere by which the gases of water pass its pressure before bubbles form, from memory"};
inline constexpr Prior kRespirationHalf{0.3, 0.2, 0.5, "half saturation [g/m3], from memory"};
inline constexpr Prior kFishConformsBelow{3.0, 2.0, 4.0,
    "g/m3; below it fish breathe in proportion to the oxygen they find, from memory"};
inline constexpr Prior kFeedingFactor{0.55, 0.3, 1.0,
    "more breathing of well fed fish, Andrews and Matsuda (1975), from memory"};
inline constexpr Prior kFullFeed_sharePerDay{0.02, 0.01, 0.03,
    "daily feed over stock of well fed fish; common practice, no source"};

// Sediment
inline constexpr Prior kSedimentTheta{1.065, 1.047, 1.08,
    "theta; 1.047 in Lin, Water and Wastewater Calculations Manual, to 1.065 (from memory)"};
inline constexpr Prior kSedimentHalf{1.0, 0.7, 1.4,
    "half saturation [g/m3], from memory; in summer the bottom water of Falling Creek Reservoir fell as "
    "with 1.0 (computed from its published profiles). Under ice the sediment is limited below 3.8 g/m3 "
    "already, Mathias and Barica (1980), Can. J. Fish. Aquat. Sci. 37:185"};
inline constexpr Prior kRegenerationShare{0.21, 0.10, 0.33,
    "of the demand that oxygen cannot meet, the part that stays in the water as debt: 0.37 of 0.90 g "
    "O2/m2/d leaves the mud as reduced substances in eleven eutrophic lakes, Mueller and others (2012), "
    "Environ. Sci. Technol. 46:9964-9971 (deep lakes have less, Steinsberger and others (2020), Limnol. "
    "Oceanogr. 65:3128), and half of it (0.3 to 0.8) is lost as gas and to burial; judgement. Also of what "
    "gathered before the start: 3.6 g/m3 after 49 days in Falling Creek Reservoir, whose methane alone came to "
    "4.8 (computed from its published profiles)"};
inline constexpr Prior kStirredDemandFactor{2.0, 1.5, 3.0, "near a running diffuser; judgement"};
inline constexpr Prior kStirredArea{12.0, 5.0, 20.0, "m2 of bottom per diffuser; judgement"};
inline constexpr Prior kMuckStore_gPerM2{40.0, 10.0, 80.0, "g O2 mobile per m2; judgement"};
inline constexpr Prior kMuckReleaseTime_h{6.0, 3.0, 12.0, "hours of running; judgement"};
inline constexpr Prior kMuckRebuildTime_d{10.0, 5.0, 20.0, "days of rest; judgement"};
inline constexpr Prior kMuckFastShare{0.4, 0.2, 0.6, "of what is stirred up; judgement"};
inline constexpr Prior kMuckReach{0.5, 0.3, 0.8,
    "m above the muck up to which a diffuser stirs all that it can; judgement"};
inline constexpr Prior kMuckFade{1.5, 1.2, 2.0,
    "times that reach: from there up a diffuser stirs nothing; judgement"};
inline constexpr Prior kMuckFullDepth{0.3, 0.2, 0.5,
    "m of muck that hold the whole mobile store; judgement"};

// Oxygen debt
inline constexpr Prior kFastShare{0.55, 0.4, 0.7, "of fast and medium debt; judgement"};
inline constexpr Prior kFastRate_perDay{24.0, 12.0, 72.0,
    "sulfide and iron of ponds, half gone in an hour; judgement"};
inline constexpr Prior kMediumRate_perDay{1.0, 0.5, 2.0,
    "methane: above 2 a day at the year's greatest in a eutrophic lake, Utsumi and others (1998), Limnol. "
    "Oceanogr. 43:471-480; at least 0.7 after the overturn of Falling Creek Reservoir (computed from its "
    "published profiles)"};
inline constexpr Prior kSlowRate_perDay{0.07, 0.03, 0.2,
    "ammonium and refractory organics, from memory; about 0.045 for ammonium after the overturn of Falling "
    "Creek Reservoir (computed from its published profiles, brought to 20 degC)"};
inline constexpr Prior kDebtTheta{1.047, 1.03, 1.08, "theta of carbonaceous demand, from memory"};
inline constexpr Prior kSlowTheta{1.08, 1.06, 1.10, "theta of nitrification, from memory"};
inline constexpr Prior kFastHalf{0.2, 0.1, 0.5, "half saturation [g/m3]; judgement"};
inline constexpr Prior kMediumHalf{0.5, 0.2, 1.0, "half saturation [g/m3]; judgement"};
inline constexpr Prior kSlowHalf{1.0, 0.5, 2.0, "half saturation of nitrification [g/m3], from memory"};
inline constexpr Prior kSlowOfDebt{0.25, 0.15, 0.5, "slow debt over fast plus medium; judgement"};

// Water and air
inline constexpr Prior kWindShelter{0.6, 0.35, 0.9,
    "wind on a pond over station wind; common practice, no source"};
inline constexpr Prior kExchangeFactor{1.0, 0.6, 2.5,
    "piston velocity over the model's: formulas of wind differ by so much on small waters; judgement. "
    "Vachon and Prairie (2013), second hand, would be 2 to 3 times the model over 1 ha"};
inline constexpr Prior kAlkalinity_mgPerL{100.0, 30.0, 250.0,
    "as CaCO3, of pond water where none was measured; judgement"};
inline constexpr Prior kPh{7.5, 6.8, 8.5, "pond water where none was measured; judgement"};
inline constexpr Prior kAeratorAlpha{0.92, 0.85, 0.97,
    "transfer in pond over clean water, ponds 0.90 to 0.95, from memory of Boyd (1998), Aquacult. Eng. "
    "18:9-40"};
inline constexpr Prior kAeratorBeta{0.97, 0.95, 0.99,
    "saturation of pond over clean water, from memory of Boyd (1998)"};
inline constexpr Prior kAeratorReach{0.5, 0.3, 1.0,
    "m of water that a splashing aerator turns over; judgement"};
inline constexpr Prior kDebtOfWeeds{1.0, 0.8, 1.2,
    "g O2 per g of dead dry mass, Boyd (1973): 0.99 for higher plants"};
inline constexpr Prior kFishMass_g{250.0, 80.0, 800.0, "a fish without a stated mass; judgement"};
inline constexpr Prior kNonRecirculatedShare{0.5, 0.4, 0.7,
    "of the plume's flow, not drawn in again at once; judgement"};
inline constexpr Prior kBubble_mm{3.0, 1.5, 5.0,
    "bubble diameter of pond diffusers; common practice, no source. Mixing hardly depends on it, Sahoo and "
    "Luketina (2003), Mar. Freshw. Res. 54:271-285"};

// Mixing
inline constexpr Prior kWindFriction{1.2e-3, 1.0e-3, 1.4e-3,
    "friction velocity in the water over the wind, Henderson-Sellers (1985); the range is judgement"};
inline constexpr Prior kBackgroundDiffusion_m2PerS{1.04e-8, 0.4e-8, 2.6e-8,
    "at N^2 of 1 /s^2, Fang and Stefan (1996); the range is judgement. Hondzo and Stefan (1993), from "
    "memory, let it rise with the lake's area and have as much at 2.5 ha"};

inline constexpr Prior kChlorophyllBelow{1.0 / 3.0, 0.1, 0.6, "of the value above z_b; judgement"};
// clang-format on

/// Sulfide where none was measured, as the oxygen that it takes over fast debt of water without oxygen, by
/// smell.
[[nodiscard]] const Prior& sulfideOfFastDebt(const Bottom& bottom);

/// Kinds of pond that the trade's table of unknowns tells apart (common practice, no source).
enum class PondClass { Clean, Average, Mucky };

/// By age, muck and smell: clean under 5 years with under 0.1 m of muck; mucky from 30 years, 0.4 m or a
/// strong smell; average otherwise and where nothing is known.
[[nodiscard]] PondClass pondClass(const Bottom& bottom);

/// The trade's table of unknown ponds, by class.
struct ClassPriors {
    Prior sedimentDemand_gPerM2Day;
    Prior oxygenDebt;
    Prior stock_kgPerHa;
    Prior muck;
};
[[nodiscard]] const ClassPriors& classPriors(PondClass kind);

}  // namespace engine
