"""Two airstreams that meet: what they make, and how far one probe can be off before they mix."""

from lightoff.formula import Number, formula

# Standard uncertainty of the mean temperature by one probe, as a share of the difference of
# temperatures that are to be mixed: the rise of a furnace, or return and outdoor air.
# Engineering judgement: nothing published was found for gas furnaces.
BEHIND_FURNACE = 0.10  # [1] within three duct diameters
FAR_DOWNSTREAM = 0.02  # [1] ten diameters and two elbows on, or behind the fan
IN_MIXING_BOX = 0.12  # [1] where outdoor and return air meet


@formula
def mass_share(mass_flow: Number, other_mass_flow: Number) -> Number:
    """Share of one airstream in the mixture of two, by the mass of their dry air.

    x = m_1 / (m_1 + m_2)

    Parameters
    ----------
    mass_flow : m_1, dry air of the one stream, 0 to 60 [kg/s]
    other_mass_flow : m_2, dry air of the other, 0.01 to 60 [kg/s]

    Returns
    -------
    x, share of the one stream [1]

    Source: conservation of mass.

    >>> mass_share(1.0, 3.0)
    0.25
    """
    return mass_flow / (mass_flow + other_mass_flow)


@formula
def mixed_humidity_ratio(share: Number, *, humidity_ratio: Number, other: Number) -> Number:
    """Humidity ratio of two airstreams mixed.

    W = x W_1 + (1 - x) W_2

    Parameters
    ----------
    share : x, share of the one stream in the dry air, 0 to 1 [1]
    humidity_ratio : W_1, of the one stream, 0 to 0.2 [kg/kg]
    other : W_2, of the other, 0 to 0.2 [kg/kg]

    Returns
    -------
    W, of the mixture; what is beyond saturation is fog [kg/kg]

    Source: conservation of water; ASHRAE Fundamentals, psychrometrics, adiabatic mixing.

    >>> mixed_humidity_ratio(0.25, humidity_ratio=0.002, other=0.01)
    0.008
    """
    return share * humidity_ratio + (1 - share) * other


@formula
def mixed_enthalpy(share: Number, *, enthalpy: Number, other: Number) -> Number:
    """Enthalpy of two airstreams mixed.

    h = x h_1 + (1 - x) h_2

    Parameters
    ----------
    share : x, share of the one stream in the dry air, 0 to 1 [1]
    enthalpy : h_1, of the one stream, per mass of dry air, -60 000 to 700 000 [J/kg]
    other : h_2, of the other, -60 000 to 700 000 [J/kg]

    Returns
    -------
    h, of the mixture, per mass of dry air [J/kg]

    Source: conservation of energy; ASHRAE Fundamentals, psychrometrics, adiabatic mixing.

    >>> mixed_enthalpy(0.25, enthalpy=-10e3, other=50e3)
    35000.0
    """
    return share * enthalpy + (1 - share) * other


@formula
def outdoor_share(mixed: Number, *, outdoor: Number, indoor: Number) -> Number:
    """Share of outdoor air in mixed air, from three temperatures.

    x = (T_r - T_m) / (T_r - T_o)

    Parameters
    ----------
    mixed : T_m, of the mixed air, 220 to 330 [K]
    outdoor : T_o, of the outdoor air, 220 to 325 [K]
    indoor : T_r, of the return air, other than the outdoor air's, 250 to 330 [K]

    Returns
    -------
    x, share of outdoor air by mass; outside 0 to 1 where a temperature is wrong [1]

    Source: energy balance with one heat capacity for both streams.

    >>> round(outdoor_share(288.15, outdoor=263.15, indoor=296.15), 4)
    0.2424
    """
    return (indoor - mixed) / (indoor - outdoor)


@formula
def outdoor_share_spread(
    share: Number, difference: Number, *, probe: Number, unmixed: Number
) -> Number:
    """How uncertain a share of outdoor air from three temperatures is: blind as they come close.

    U_x = 2 (u_m^2 + u^2 (1 + x^2 + (1 - x)^2))^0.5 / Delta_T

    Parameters
    ----------
    share : x, share of outdoor air, 0 to 1 [1]
    difference : Delta_T, size of the difference of outdoor and return air, 0.1 to 60 [K]
    probe : u, standard uncertainty of each of the three temperatures read, 0 to 5 [K]
    unmixed : u_m, what unmixed air adds to that of the mixed air, 0 to 10 [K]

    Returns
    -------
    U_x, expanded uncertainty of the share, twice the standard one [1]

    Source: JCGM 100:2008, 5.1.2, for the balance of three temperatures.

    >>> round(outdoor_share_spread(0.25, 30.0, probe=0.5, unmixed=3.6), 3)
    0.244
    """
    read = probe**2 * (1 + share**2 + (1 - share) ** 2)
    return 2 * (unmixed**2 + read) ** 0.5 / difference


@formula
def unmixed_probe_spread(difference: Number, places: Number, *, share: Number) -> Number:
    """How far a probe's mean is off where air is not mixed yet: standard uncertainty.

    u = s Delta_T / n^0.5

    Parameters
    ----------
    difference : Delta_T, size of the difference that is to be mixed, 0 to 150 [K]
    places : n, places over the duct whose mean is taken, 1 to 100 [1]
    share : s, that of one place, as a share of the difference, 0 to 0.5 [1]

    Returns
    -------
    u, standard uncertainty of the mean temperature [K]

    Source: engineering judgement: 0.10 of the rise within three diameters of a furnace, 0.02 ten
    diameters and two elbows on, 0.12 in a mixing box; places taken as independent.

    >>> unmixed_probe_spread(40.0, 1.0, share=0.10), unmixed_probe_spread(36.0, 9.0, share=0.10)
    (4.0, 1.2)
    """
    return share * difference / places**0.5


@formula
def largest_unmixed_spread(below: Number, above: Number) -> Number:
    """The most a single probe can scatter about the mean, however badly the air is mixed.

    u = (Delta_T_c Delta_T_h)^0.5

    Parameters
    ----------
    below : Delta_T_c, from the coldest air in the duct up to the mean, 0 to 150 [K]
    above : Delta_T_h, from the mean up to the hottest, 0 to 150 [K]

    Returns
    -------
    u, largest standard deviation of the temperature at a place met by chance [K]

    Source: Bhatia and Davis, A better bound on the variance, Amer. Math. Monthly 107 (2000) 353:
    met when all the air is as cold or as hot as it comes.

    >>> largest_unmixed_spread(10.0, 40.0)
    20.0
    """
    return (below * above) ** 0.5
