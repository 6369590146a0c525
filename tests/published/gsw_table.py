"""Prints oxygen saturation and density of the Gibbs SeaWater toolbox for gsw_test.cpp.

One row per point: temperature (ITS-90, degC), practical salinity, saturation at 1 atm (g/m^3),
density at the surface (kg/m^3).
"""
import gsw

OXYGEN_G_PER_UMOL = 31.9988e-6  # the molar mass in use when the data were published

for salinity in (0.0, 0.5, 2.0, 5.0, 10.0, 20.0, 35.0):
    for temperature in range(0, 36):
        # Reference composition: absolute salinity is practical salinity times 35.16504 / 35.
        absolute = salinity * 35.16504 / 35.0
        conservative = gsw.CT_from_t(absolute, temperature, 0.0)
        density = gsw.rho(absolute, conservative, 0.0)
        saturation = gsw.O2sol_SP_pt(salinity, temperature) * density * OXYGEN_G_PER_UMOL
        print(temperature, salinity, repr(float(saturation)), repr(float(density)))
