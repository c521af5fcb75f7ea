"""One piece of meat as a continuous system dy/dt = f(t, y): the equations that the crate marches, written down again.

Nothing here is taken from the crate but the numbers: the catalogue comes from `cuts.json`, which the crate prints, and
the fitted and hand-set constants stand below as they stand in the crate. There is no time step in any flux.

Units: m, s, kg, °C, Pa, J. "Column" is one square metre of raw surface of the one-coordinate body. Needs numpy; numba,
where it is installed, makes it some fifty times faster and changes no result.
"""

import math

import numpy as np

try:
    from numba import njit
except ImportError:

    def njit(function):
        return function


# Fitted and hand-set numbers, as in the crate's physics.
FREE_WATER = 1.57e-7
BOUND_WATER = 3e-10
MOBILITY_GROWTH = 0.0155
DRIP = 0.975
CRUST_VAPOUR = 7.9e-8
DRY_LIMIT = 0.9
WATER_HELD_WHEN_COOKED = 1.883
CONDUCTIVITY_FACTOR = 1.328
STEAM = 1e-5
SHRINK = 1.0 / 3.0
FAT_KEPT = 0.45
FAT_RATE = 1.0 / (5.0 * 3600.0)
FILM_HALF = 0.02
RUN_OFF = 120.0
BETWEEN_BONES = 0.5
EDGE_SHARE = 0.16
WRAP_STEAM = 2e-7
PAPER_VAPOUR_FRESH = 1.47e-9
PAPER_VAPOUR_SOAKED = 0.44e-9
PAPER_SOAK_TIME = 2.5 * 3600.0
FOIL_VAPOUR = 2e-10
AIR_MASS = 0.12
BOX_CAPACITY = 6000.0
BOX_LOSS = 0.6
BOX_START = 5.0
BONE_CELLS = 4
BONE_CONDUCTIVITY = 0.55
BONE_CAPACITY = 2.8e6

# Widths over which kinks are rounded off: free water, steam, surface flux, film, the colder of box and meat.
FREE_WIDTH = 1e-2
STEAM_WIDTH = 200.0
FLUX_WIDTH = 1e-7
FILM_WIDTH = 1e-3
BOX_WIDTH = 100.0

# Cover: emissivity, heat resistance, liquid that stays on the meat.
COVERS = {
    "bare": (0.9, 0.0, 0.10),
    "paper": (0.9, 0.0041, 0.3),
    "foil": (0.6, 0.0041, 3.0),
}

# Place: speed of the air, humidity ratio, draught, walls above outside relative to the air.
CLIMATES = {
    "offset": (0.9, 0.030, 0.012, 0.80),
    "kettle": (0.35, 0.028, 0.003, 0.92),
    "drum": (0.45, 0.028, 0.003, 0.92),
    "ceramic": (0.20, 0.035, 0.0016, 0.94),
    "cabinet": (0.25, 0.030, 0.0025, 0.95),
    "electric": (0.18, 0.012, 1.15e-4, 0.95),
    "generic": (0.60, 0.030, 0.004, 0.98),
    "still-oven": (0.60, 0.015, 0.003, 1.04),
    "fan-oven": (1.5, 0.012, 0.004, 1.00),
    "counter": (0.15, 0.008, 1.0, 1.0),
    "warm-oven": (0.2, 0.03, 0.003, 1.0),
    "rest-box": (0.02, 0.008, 0.0, 1.0),
}

# Densities at 20 °C of water, protein, fat, ash.
RHO_W, RHO_P, RHO_F, RHO_A = 997.2, 1319.5, 917.2, 2418.2
LATENT, LATENT_FALL = 2.5009e6, 2361.0

# Places in the vector of parameters.
(
    XW, XP, XF, XA, SHARE, PRESSURE, AIR, WALLS, SPEED, HUMIDITY, DRAUGHT, LENGTH, FLUX, COLUMNS, PIECES,
    DRIP_LENGTH, EMISSIVITY, RESISTANCE, FILM_LIMIT, COVER, SINCE, BOXED, ROOM, BONES,
) = range(24)
PARAMETERS = 24


@njit
def saturation(t):
    return 611.21 * math.exp((18.678 - t / 234.5) * t / (257.14 + t))


@njit
def positive(x, width):
    """The positive part of x, rounded off over a width above zero."""
    if x <= 0.0:
        return 0.0
    if x < width:
        return 0.5 * x * x / width
    return x - 0.5 * width


@njit
def latent(t):
    return LATENT - LATENT_FALL * t


@njit
def forced(speed, length):
    reynolds = speed * length / 2.3e-5
    if reynolds > 4000.0:
        nusselt = 0.193 * reynolds**0.618
    else:
        nusselt = 0.683 * reynolds**0.466
    return 0.030 / length * 0.88 * nusselt


@njit
def exchange(p, air, walls, face):
    """Heat to a face from air and walls, and its convective coefficient."""
    natural = 1.42 * (math.sqrt((air - face) ** 2 + 4.0) / p[LENGTH]) ** 0.25
    h = (natural**3 + forced(p[SPEED], p[LENGTH]) ** 3) ** (1.0 / 3.0)
    a, b = face + 273.15, walls + 273.15
    r = p[EMISSIVITY] * 5.670374e-8 * (a * a + b * b) * (a + b)
    return (h * (air - face) + r * (walls - face)) / (1.0 + (h + r) * p[RESISTANCE]), h


@njit
def wrap_resistance(p, t):
    """Resistance of the wrap to vapour at a time."""
    if p[COVER] == 0.0:
        return 0.0
    if p[COVER] == 2.0:
        return 1.0 / FOIL_VAPOUR
    share = math.exp((p[SINCE] - t) / PAPER_SOAK_TIME)
    return 1.0 / (PAPER_VAPOUR_SOAKED + (PAPER_VAPOUR_FRESH - PAPER_VAPOUR_SOAKED) * share)


@njit
def outside_vapour(p, w, box, face):
    """Vapour pressure of the air; in the rest box the saturation at the colder of box and face."""
    if p[BOXED] == 0.0:
        return p[PRESSURE] * w / (0.622 + w)
    a, b = saturation(box), saturation(face)
    return 0.5 * (a + b - math.sqrt((a - b) ** 2 + BOX_WIDTH**2))


@njit
def film_balance(p, t, w, box, air, walls, wet, inward, inner, face):
    """What the surface has too much of, and evaporation from the film, resistance and vapour outside."""
    heat, h = exchange(p, air, walls, face)
    s = saturation(face)
    outside = outside_vapour(p, w, box, face)
    most = 0.95 * p[PRESSURE]
    between = p[PRESSURE] - 0.5 * (min(s, most) + min(outside, most))
    r = between * 1006.0 * 0.90 / 0.622 / h + wrap_resistance(p, t)
    x = p[SHARE] * (s - outside) / r
    if p[COVER] > 0.0:
        x += p[SHARE] * WRAP_STEAM * positive(s - p[PRESSURE], STEAM_WIDTH)
    e = wet * x if x > 0.0 else x
    return heat - inward * (face - inner) - latent(face) * e, e, r, outside, heat


@njit
def rhs(t, y, p, d, area, volume):
    """The right-hand side. y: temperature and water of each cell in turn, film, humidity, box, fat and tenderness of
    each cell, and the totals evaporated, dripped, fat lost, heat taken in, heat into evaporation, of a column."""
    n, nb = d.size, int(p[BONES])
    dy = np.zeros_like(y)
    film, w, box = y[2 * n], y[2 * n + 1], y[2 * n + 2]
    xw, xp, xf, xa = p[XW], p[XP], p[XF], p[XA]
    raw = 1.0 / (xw / RHO_W + xp / RHO_P + xf / RHO_F + xa / RHO_A)
    lean = raw * (xp + xa)
    full = xw / (xp + xa)
    k, c, surplus, dry, vapour, warm = np.zeros(n), np.zeros(n), np.zeros(n), np.zeros(n), np.zeros(n), np.zeros(n)
    present, meat = 0.0, 0.0
    for i in range(n):
        if i < nb:
            k[i], c[i] = BONE_CONDUCTIVITY, BONE_CAPACITY
            continue
        T, W, F = y[2 * i], y[2 * i + 1], y[2 * n + 3 + i]
        vw, vp, vf, va = W * lean / RHO_W, raw * xp / RHO_P, F * raw / RHO_F, raw * xa / RHO_A
        v = vw + vp + vf + va
        present += v * volume[i]
        meat += volume[i]
        kw = 0.57109 + 1.7625e-3 * T - 6.7036e-6 * T * T
        kp = 0.17881 + 1.1958e-3 * T - 2.7178e-6 * T * T
        kf = 0.18071 - 2.7604e-4 * T - 1.7749e-7 * T * T
        k[i] = CONDUCTIVITY_FACTOR * (vw * kw + vp * kp + vf * kf + va * 0.35) / v
        cw = 4176.2 - 0.090864 * T + 5.4731e-3 * T * T
        cp = 2008.2 + 1.2089 * T - 1.3129e-3 * T * T
        melting = 60e3 / (8.0 * math.sqrt(2.0 * math.pi)) * math.exp(-0.5 * ((T - 32.0) / 8.0) ** 2)
        cf = 1984.2 + 1.4733 * T - 4.8008e-3 * T * T + melting
        c[i] = W * lean * cw + raw * (xp * cp + F * cf + xa * 1000.0)
        held = full - (full - WATER_HELD_WHEN_COOKED) / (1.0 + 30.0 * math.exp(-0.25 * (T - 52.0)))
        surplus[i] = W - held
        u = 1.0 - W / (DRY_LIMIT * WATER_HELD_WHEN_COOKED)
        dry[i] = min(1.0, 0.5 * (u + math.sqrt(u * u + 1e-4)))
        vapour[i] = 0.985 * (1.0 - math.exp(-W / 0.15)) * saturation(T)
        warm[i] = math.exp(MOBILITY_GROWTH * (T - 60.0))
    present /= meat
    shorter = present**SHRINK
    smaller = present / shorter

    heat, water = np.zeros(n), np.zeros(n)
    for i in range(n - 1):
        j = i + 1
        a = area[j] * smaller
        T, S = y[2 * i], y[2 * j]
        h = a / (shorter * (0.5 * d[i] / k[i] + 0.5 * d[j] / k[j])) * (T - S)
        heat[i] -= h
        heat[j] += h
        if i < nb:
            continue
        dx = 0.5 * (d[i] + d[j]) * shorter
        free = 0.5 * FREE_WATER * (warm[i] + warm[j])
        bound = 0.5 * BOUND_WATER * (
            warm[i] * min(y[2 * i + 1] / full, 1.0) + warm[j] * min(y[2 * j + 1] / full, 1.0)
        )
        rise = positive(surplus[i], FREE_WIDTH) - positive(surplus[j], FREE_WIDTH)
        juice = a * lean / dx * (bound * (surplus[i] - surplus[j]) + free * rise)
        opened = dry[j] * dry[j] * (3.0 - 2.0 * dry[j])
        way = (0.5 * d[i] * dry[i] + 0.5 * d[j]) * shorter * 461.5 * (0.5 * (T + S) + 273.15)
        steam = a * opened * (vapour[i] - vapour[j]) * CRUST_VAPOUR / way
        carried = latent(0.5 * (T + S)) * steam
        water[i] -= juice + steam
        water[j] += juice + steam
        heat[i] -= carried
        heat[j] += carried

    dripping, evaporated, in_steam = 0.0, 0.0, 0.0
    for i in range(nb, n):
        T = y[2 * i]
        drip = DRIP * FREE_WATER * warm[i] * 2.467 / (p[DRIP_LENGTH] * shorter) ** 2 * lean
        drip *= positive(surplus[i], FREE_WIDTH) * volume[i]
        steam = STEAM * positive(vapour[i] - p[PRESSURE], STEAM_WIDTH) * volume[i]
        water[i] -= drip + steam
        heat[i] -= latent(T) * steam
        dripping += drip
        evaporated += steam
        in_steam += latent(T) * steam

    # The surface finds its temperature at once: Newton with differences, to a millionth of a kelvin.
    m = n - 1
    boxed = p[BOXED] == 1.0
    air = box if boxed else p[AIR]
    walls = box if boxed else p[WALLS]
    flux = p[FLUX] * smaller
    liquid = film / flux
    wet = liquid / (FILM_HALF + max(liquid, 0.0))
    inner = y[2 * m]
    inward = k[m] / (0.5 * d[m] * shorter) / p[FLUX]
    face = inner
    for _ in range(60):
        f0 = film_balance(p, t, w, box, air, walls, wet, inward, inner, face)[0]
        f1 = film_balance(p, t, w, box, air, walls, wet, inward, inner, face + 1e-5)[0]
        step = f0 / ((f1 - f0) / 1e-5)
        face -= min(max(step, -30.0), 30.0)
        if abs(step) < 1e-9:
            break
    _, e, r, outside, got = film_balance(p, t, w, box, air, walls, wet, inward, inner, face)
    crust = 0.5 * d[m] * shorter * 461.5 * (inner + 273.15) / CRUST_VAPOUR * dry[m]
    through = (1.0 - wet) * positive(p[SHARE] * (vapour[m] - outside) / (r + crust), FLUX_WIDTH)
    # The film's evaporation is paid at the surface, the crust's in the last cell.
    heat[m] += flux * (got - latent(face) * e - latent(inner) * through)
    mobile, bound = FREE_WATER * warm[m], BOUND_WATER * warm[m] * min(y[2 * m + 1] / full, 1.0)
    drain = flux * lean / (0.5 * d[m] * shorter) * (
        (mobile + bound) * positive(surplus[m], FREE_WIDTH) + bound * min(surplus[m], 0.0) * wet
    )
    water[m] -= flux * through + drain
    run_off = flux * positive(liquid - p[FILM_LIMIT], FILM_WIDTH) / RUN_OFF
    tight = 1.0 if p[COVER] == 2.0 else 0.0
    dy[2 * n] = drain - flux * e - run_off + tight * dripping
    evaporated += flux * (e + through)
    in_steam += flux * (latent(face) * e + latent(inner) * through)
    taken = flux * got

    if nb > 0:
        inward = k[0] / (0.5 * d[0] * shorter)
        low = y[0]
        for _ in range(60):
            f0 = exchange(p, air, walls, low)[0] - inward * (low - y[0])
            f1 = exchange(p, air, walls, low + 1e-5)[0] - inward * (low + 1e-5 - y[0])
            step = f0 / ((f1 - f0) / 1e-5)
            low -= min(max(step, -30.0), 30.0)
            if abs(step) < 1e-9:
                break
        got, h = exchange(p, air, walls, low)
        heat[0] += smaller * got
        taken += smaller * got
        T = y[2 * nb]
        s = saturation(T)
        outside = saturation(box) if boxed else p[PRESSURE] * w / (0.622 + w)
        most = 0.95 * p[PRESSURE]
        between = p[PRESSURE] - 0.5 * (min(s, most) + min(outside, most))
        r = between * 1006.0 * 0.90 / 0.622 / h + wrap_resistance(p, t)
        r += 0.5 * d[nb] * shorter * 461.5 * (T + 273.15) / CRUST_VAPOUR * dry[nb]
        below = smaller * BETWEEN_BONES * positive(p[SHARE] * (vapour[nb] - outside) / r, FLUX_WIDTH)
        water[nb] -= below
        heat[nb] -= latent(T) * below
        evaporated += below
        in_steam += latent(T) * below

    lost_fat = 0.0
    for i in range(n):
        dy[2 * i] = heat[i] / (c[i] * volume[i])
        if i < nb:
            continue
        dy[2 * i + 1] = water[i] / (lean * volume[i])
        T, F = y[2 * i], y[2 * n + 3 + i]
        leaving = FAT_RATE * (F - FAT_KEPT * xf) / (1.0 + math.exp(-(T - 60.0) / 6.0))
        dy[2 * n + 3 + i] = -leaving
        lost_fat += leaving * raw * volume[i]
        rate = math.exp(73600.0 / 8.314 * (1.0 / 363.15 - 1.0 / (T + 273.15))) / (4.785 * 3600.0)
        dy[3 * n + 3 + i] = rate
    if boxed:
        lost = BOX_LOSS * (box - p[ROOM])
        dy[2 * n + 2] = (p[COLUMNS] * (latent(box) * evaporated - taken) - lost) / BOX_CAPACITY
    else:
        given = p[PIECES] * p[COLUMNS] * evaporated
        dy[2 * n + 1] = (p[DRAUGHT] * (p[HUMIDITY] - w) + given) / AIR_MASS
    o = 4 * n + 3
    dy[o] = evaporated
    dy[o + 1] = (1.0 - tight) * dripping + run_off
    dy[o + 2] = lost_fat
    dy[o + 3] = taken
    dy[o + 4] = in_steam
    return dy


def shape(dimensions, fill):
    """Exponent, radius, ratio of the fluxes and volume of the one-coordinate body."""
    l1, l2, l3 = sorted(x / 2.0 for x in dimensions)
    b2, b3 = l2 / l1, l3 / l1
    side = lambda b: 1.04 * math.exp(-0.56 * (b - 1.0) ** 1.75)
    share = lambda b: math.exp(-0.14 * (b - 1.0) ** 2.4) / (b * b)
    exponent = side(b2) + side(b3)
    root = 2.467 + 3.0 * exponent + 0.35 * exponent**2
    round_ = min(max((1.0 - fill) / (1.0 - math.pi / 6.0), 0.0), 1.0)
    brick = 0.75 * (1.0 + share(b2) + share(b3))
    ellipsoid = 0.75 + 1.01 * share(b2) + 1.24 * share(b3)
    radius = l1 * math.sqrt(root / (math.pi**2 / 3.0 * ((1.0 - round_) * brick + round_ * ellipsoid)))
    q = 1.6075
    mean = ((l1 * l2) ** q + (l1 * l3) ** q + (l2 * l3) ** q) / 3.0
    area = (1.0 - round_) * 8.0 * (l1 * l2 + l1 * l3 + l2 * l3) + round_ * 4.0 * math.pi * mean ** (1.0 / q)
    volume = 8.0 * fill * l1 * l2 * l3
    ratio = area / volume * radius / (exponent + 1.0)
    return exponent, radius, 1.0 + 0.4 * (ratio - 1.0), volume


def mesh(length, cells, both=False):
    """Cells of 0.4 mm where it dries, each larger by the same ratio, the largest at most 25 times the smallest."""
    rank = np.array([min(i, cells - 1 - i) if both else cells - 1 - i for i in range(cells)])
    finest = lambda q: length / np.sum(q**rank)
    low, high = 1.0, 25.0 ** (1.0 / max(rank.max(), 1))
    if finest(low) <= 0.4e-3:
        high = low
    elif finest(high) >= 0.4e-3:
        low = high
    for _ in range(100):
        q = 0.5 * (low + high)
        low, high = (q, high) if finest(q) > 0.4e-3 else (low, q)
    return high**rank * finest(high)
