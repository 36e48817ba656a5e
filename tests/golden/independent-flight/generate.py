"""An independent solution of the everyday flight model, for tests/golden/independent-flight.test.ts.

Written from the model's description, not from the program: time is the independent variable, the frame stands on the Earth, the lift is
found by balancing moments over the arrow's surfaces, and the solver is SciPy's DOP853. README.md beside this file says how it was run.
"""

import csv
import itertools
import math
import pathlib
import platform
import sys

import numpy as np
import scipy
from scipy.integrate import solve_ivp
from scipy.interpolate import CubicHermiteSpline

HERE = pathlib.Path(__file__).parent
STANDARD_GRAVITY = 9.80665  # m/s2, exact
EARTH_RATE = 7.292115e-5  # rad/s
RTOL, ATOL = 1e-12, 1e-13
GAUSS_PLACES, GAUSS_WEIGHTS = np.polynomial.legendre.leggauss(8)

# ---------------------------------------------------------------------------------------------- what is flown

# Drag coefficient on the shaft's cross-section against the Reynolds number on its diameter. Invented; the fall and rise is what a layer
# does that turns turbulent along the shaft.
DRAG = {
    "constant": [(1e4, 2.2)],
    "target": [(8e3, 1.9), (1.4e4, 1.55), (1.8e4, 1.6), (2.3e4, 2.5), (3e4, 2.65), (5e4, 2.5)],
    "hunting": [(1e4, 3.1), (2e4, 2.7), (3e4, 2.45), (4e4, 2.3), (6e4, 2.1)],
    "wooden": [(1e4, 2.4), (2e4, 2.9), (2.6e4, 2.7), (4e4, 2.5)],
}

# Places of surfaces and shaft ends from the balance point, forward positive. `roll_m4`: number of vanes times their slope on their own
# area times the integral of chord times radius squared. Right helical positive.
ARROWS = {
    "wooden": dict(mass_kg=0.0305, diameter_m=0.0087, drag="wooden", drag_scale=1, axial_inertia_kgm2=5.1e-7, spin_radpm=1.1,
                   roll_m4=6.2e-8, nose_slope=2, nose_place_m=0.34, vane_slope=38, vane_place_m=-0.36, rear_m=-0.41,
                   front_m=0.33, side_force=0.3),
    "target": dict(mass_kg=0.0201, diameter_m=0.0055, drag="target", drag_scale=1.04, axial_inertia_kgm2=1.05e-7, spin_radpm=3.4,
                   roll_m4=3.1e-8, nose_slope=2, nose_place_m=0.3, vane_slope=30, vane_place_m=-0.37, rear_m=-0.42,
                   front_m=0.29, side_force=0.5),
    "hunting": dict(mass_kg=0.0291595, diameter_m=0.006223, drag="hunting", drag_scale=0.96, axial_inertia_kgm2=2.832e-7,
                    spin_radpm=4.6, roll_m4=1.24e-7, nose_slope=2, nose_place_m=0.29, vane_slope=28.1,
                    vane_place_m=-0.4009, rear_m=-0.4555, front_m=0.2684, side_force=0),
    "ceiling": dict(mass_kg=0.0227, diameter_m=0.0052, drag="hunting", drag_scale=1, axial_inertia_kgm2=1.6e-7, spin_radpm=-6.1,
                    roll_m4=9e-8, nose_slope=2, nose_place_m=0.27, vane_slope=36, vane_place_m=-0.38, rear_m=-0.44,
                    front_m=0.27, side_force=1),
    "broadhead": dict(mass_kg=0.0389, diameter_m=0.0066, drag="constant", drag_scale=1.1, axial_inertia_kgm2=4.4e-7,
                      spin_radpm=3.2, roll_m4=1.5e-7, nose_slope=9, nose_place_m=0.31, vane_slope=27, vane_place_m=-0.43,
                      rear_m=-0.49, front_m=0.29, side_force=0.15),
}

# Speed at launch and the ranges at which each arrow is read. From a slow wooden longbow to a fast compound.
SHOTS = {
    "wooden": dict(speed_mps=43, ranges=(10, 25, 45, 60)),
    "target": dict(speed_mps=57, ranges=(10, 30, 50, 70, 90)),
    "hunting": dict(speed_mps=85.344, ranges=(5, 20, 50, 91.44)),
    "ceiling": dict(speed_mps=107, ranges=(5, 30, 60, 110)),
    "broadhead": dict(speed_mps=74, ranges=(10, 40, 73.152)),
}
SLOPES_DEG = (-40, -15, 0, 20, 40)
BEARINGS_DEG = (0, 45, 90, 135, 180, 225, 270, 315)

# Three airs, four winds with and without a profile of height, four places: taken in turn.
AIRS = ((1.225, 1.7894e-5), (0.96, 1.71e-5), (1.36, 1.64e-5))
WINDS = ((4.5, 0, 1.6), (9, 0.15, 2), (2.5, 1 / 7, 10), (7, 0.3, 1.6))
PLACES = ((None, None), (45, None), (-35, 110), (60, 250))


def aimed(arrow, speed, density, slope, distance):
    """Elevation of a launch that comes down through the line of sight near a distance: mean speed by drag 2.4 and gravity."""
    slowing = 0.5 * density * 2.4 * math.pi / 4 * arrow["diameter_m"] ** 2 / arrow["mass_kg"] * distance / 2
    time = distance / (speed * (1 - slowing) - STANDARD_GRAVITY * math.sin(slope) * distance / speed / 2)
    return STANDARD_GRAVITY * math.cos(slope) * time**2 / 2 / distance + 0.1 / distance


def cases():
    """Every arrow uphill, level and downhill, in winds from all sides."""
    turn = itertools.count()
    for name, shot in SHOTS.items():
        for slope in SLOPES_DEG:
            for half in (0, 1):
                n = next(turn)
                speed, bearing = shot["speed_mps"], BEARINGS_DEG[(3 * n + 4 * half) % 8]
                wind, shear, reference = WINDS[n % 4]
                density, viscosity = AIRS[n % 3]
                latitude, azimuth = PLACES[(n // 2) % 4]
                rise = aimed(ARROWS[name], speed, density, math.radians(slope), shot["ranges"][-1])
                yield dict(
                    case=f"{name} {slope} deg, wind from {bearing}", arrow=name, speed_mps=speed,
                    elevation_rad=round(rise, 4), bearing_rad=round(0.002 * (n % 5 - 2), 4), forward_m=round(0.7 + 0.05 * (n % 7), 2),
                    above_m=-0.1 - 0.005 * (n % 6), right_m=0.003 * (n % 3 - 1), spin_radps=(0, 0, 12)[n % 3], slope_deg=slope,
                    eye_m=1.6, density_kgpm3=density, viscosity_Pas=viscosity, wind_mps=wind, wind_from_deg=bearing,
                    shear=shear, wind_height_m=reference, latitude_deg=latitude, azimuth_deg=azimuth,
                )


# The three arrows of reference/computed-trajectories, launched level from the eye in still air at constant drag.
LEVEL = {
    "A": dict(speed=57.0, mass=0.0200, diameter=0.0055, coefficient=1.5),
    "A2": dict(speed=57.0, mass=0.0200, diameter=0.0055, coefficient=2.6),
    "B": dict(speed=85.0, mass=0.0272155, diameter=0.0065, coefficient=2.0),
}
LEVEL_RANGES = (10, 18, 30, 50, 70, 91.44)

# ---------------------------------------------------------------------------------------------- the model


def monotone_cubic(points):
    """Fritsch and Carlson, 1980, section 4: parabola slopes, 0 at a turn, drawn into the circle of radius 3; secants at the ends."""
    x, y = np.array(points, dtype=float).T
    if len(x) == 1:
        return lambda reynolds: y[0]
    h, d = np.diff(x), np.diff(y) / np.diff(x)
    m = np.concatenate(([d[0]], (d[:-1] * h[1:] + d[1:] * h[:-1]) / (h[:-1] + h[1:]), [d[-1]]))
    m[1:-1][d[:-1] * d[1:] <= 0] = 0
    for i, secant in enumerate(d):
        radius = math.hypot(m[i], m[i + 1]) / abs(secant)
        if radius > 3:
            m[i : i + 2] *= 3 / radius
    curve = CubicHermiteSpline(x, y, m)
    return lambda reynolds: float(curve(min(max(reynolds, x[0]), x[-1])))


def basis(slope):
    """Along the line of sight, square to it and up, to the right; on axes forward, up, right over level ground."""
    c, s = math.cos(slope), math.sin(slope)
    return np.array([[c, s, 0.0], [-s, c, 0.0], [0.0, 0.0, 1.0]])


def earth_turn(latitude, azimuth):
    """The Earth's rotation on axes forward, up, right. Without a bearing: what is left of it on average over all bearings."""
    if latitude is None:
        return np.zeros(3)
    up = EARTH_RATE * math.sin(latitude)
    north = EARTH_RATE * math.cos(latitude)
    if azimuth is None:
        return np.array([0.0, up, 0.0])
    return np.array([north * math.cos(azimuth), up, -north * math.sin(azimuth)])


def lift(arrow, density, speed, direction, spin, coefficient):
    """Force of an arrow that rides at the small incidence at which the air turns it as fast as gravity bends its path.

    w is the part of the airspeed square to the shaft, turning the shaft's rate; a surface of slope C at place x feels w + x turning. Each
    cause has its own w, by the balance of its moment: steady, and to first order.
    """
    fall = np.array([0.0, -STANDARD_GRAVITY, 0.0])
    turning = (fall - fall.dot(direction) * direction) / speed
    per = 0.5 * density * math.pi / 4 * arrow["diameter_m"] ** 2 * speed
    surfaces = [(arrow["nose_slope"], arrow["nose_place_m"]), (arrow["vane_slope"], arrow["vane_place_m"])]
    slope = sum(C for C, _ in surfaces)
    moment = sum(C * x for C, x in surfaces)  # of the force that a common w makes, negative: it turns the arrow into the wind

    # Following the path: the surfaces' own moments cancel.
    w = -turning * sum(C * x * x for C, x in surfaces) / moment
    force = -per * sum(C * (w + x * turning) for C, x in surfaces)
    # Drag acts along the shaft, which stands off the path by w over the airspeed.
    force = force + per * coefficient * w

    # The spinning shaft in that cross-flow: circulation, strip by strip, and its moment about the balance point.
    middle, half = (arrow["front_m"] + arrow["rear_m"]) / 2, (arrow["front_m"] - arrow["rear_m"]) / 2
    circulation = arrow["side_force"] * density * 2 * math.pi * (arrow["diameter_m"] / 2) ** 2 * spin
    side, side_moment = np.zeros(3), np.zeros(3)
    for place, weight in zip(GAUSS_PLACES, GAUSS_WEIGHTS):
        x = middle + half * place
        strip = circulation * half * weight * np.cross(direction, w + x * turning)
        side, side_moment = side + strip, side_moment + x * np.cross(direction, strip)
    # What the air must undo, as a moment: the shaft's side force, less what turning the spin asks for.
    asked = side_moment - arrow["axial_inertia_kgm2"] * spin * turning
    # direction x (-per moment w) + asked = 0
    w_side = -np.cross(direction, asked) / (per * moment)
    return force + side - per * (slope - coefficient) * w_side


def motion(arrow, shot):
    """d/dt of position, velocity (both on axes forward, up, right over level ground) and spin."""
    axes = basis(math.radians(shot["slope_deg"]))
    bearing = math.radians(shot["wind_from_deg"])
    # The ground lies along the line of sight, and the wind blows along it.
    air = -shot["wind_mps"] * (math.cos(bearing) * axes[0] + math.sin(bearing) * axes[2])
    curve = monotone_cubic(DRAG[arrow["drag"]])
    density = shot["density_kgpm3"]
    angle = lambda value: None if value is None else math.radians(value)
    turn = earth_turn(angle(shot["latitude_deg"]), angle(shot["azimuth_deg"]))
    area = math.pi / 4 * arrow["diameter_m"] ** 2

    def derivative(_, state):
        position, velocity, spin = state[:3], state[3:6], state[6]
        height = shot["eye_m"] + axes[1].dot(position)
        if not height > 0.05:
            raise ValueError(f"{shot['case']}: at {height} m above the ground")
        relative = velocity - air * (height / shot["wind_height_m"]) ** shot["shear"]
        speed = math.sqrt(relative.dot(relative))
        direction = relative / speed
        coefficient = arrow["drag_scale"] * curve(density * speed * arrow["diameter_m"] / shot["viscosity_Pas"])
        force = -0.5 * density * area * coefficient * speed**2 * direction
        force = force + lift(arrow, density, speed, direction, spin, coefficient)
        acceleration = force / arrow["mass_kg"] + [0, -STANDARD_GRAVITY, 0] - 2 * np.cross(turn, velocity)
        rolling = 0.5 * density * arrow["roll_m4"] * speed * (arrow["spin_radpm"] * speed - spin)
        return np.concatenate((velocity, acceleration, [rolling / arrow["axial_inertia_kgm2"]]))

    return derivative


def reach(derivative, state, time, along, distance):
    """Fly on until the place along the line of sight is `distance`: to the estimated time, and on by what is missing."""
    for _ in range(50):
        step = (distance - along.dot(state[:3])) / along.dot(state[3:6])
        if abs(step) < 1e-14:
            return time, state
        solution = solve_ivp(derivative, (time, time + step), state, method="DOP853", rtol=RTOL, atol=ATOL)
        if not solution.success:
            raise RuntimeError(solution.message)
        time, state = time + step, solution.y[:, -1]
    raise RuntimeError(f"{distance} m is not reached")


def fly(shot):
    arrow, axes = ARROWS[shot["arrow"]], basis(math.radians(shot["slope_deg"]))
    derivative = motion(arrow, shot)
    e, b = shot["elevation_rad"], shot["bearing_rad"]
    ahead = shot["speed_mps"] * np.array([math.cos(e) * math.cos(b), math.sin(e), math.cos(e) * math.sin(b)])
    start = np.array([shot["forward_m"], shot["above_m"], shot["right_m"]])
    time, state = 0.0, np.concatenate((start @ axes, ahead @ axes, [shot["spin_radps"]]))
    for distance in SHOTS[shot["arrow"]]["ranges"]:
        time, state = reach(derivative, state, time, axes[0], distance)
        position, velocity = axes @ state[:3], axes @ state[3:6]
        yield [distance, time, *position[1:], *velocity, state[6]]


def fly_level(speed, mass, diameter, coefficient):
    k = 0.5 * 1.225 * coefficient * math.pi / 4 * diameter**2 / mass

    def derivative(_, state):
        vx, vy = state[3:5]
        v = math.hypot(vx, vy)
        return [vx, vy, 0, -k * v * vx, -k * v * vy - STANDARD_GRAVITY, 0]

    time, state, along = 0.0, np.array([0, 0, 0, speed, 0, 0.0]), np.array([1.0, 0, 0])
    for distance in LEVEL_RANGES:
        time, state = reach(derivative, state, time, along, distance)
        yield [distance, time, -state[1], math.hypot(state[3], state[4])]


# ---------------------------------------------------------------------------------------------- the files


def text(value):
    return "" if value is None else value if isinstance(value, str) else format(value, ".12g")


def write(name, header, rows):
    with open(HERE / name, "w", newline="") as file:
        writer = csv.writer(file, lineterminator="\n")
        writer.writerow(header)
        writer.writerows([text(value) for value in row] for row in rows)


def main():
    shots = list(cases())
    for shot in shots:
        shot["case"] = shot["case"].replace(",", "")
    write("arrows.csv", ["arrow", *next(iter(ARROWS.values()))], ([name, *arrow.values()] for name, arrow in ARROWS.items()))
    write("drag.csv", ["drag", "reynolds", "coefficient"], ([name, *p] for name, points in DRAG.items() for p in points))
    write("cases.csv", list(shots[0]), (shot.values() for shot in shots))
    columns = ["range_m", "time_s", "height_m", "lateral_m", "along_mps", "up_mps", "right_mps", "spin_radps"]
    write("flights.csv", ["case", *columns], ([shot["case"], *row] for shot in shots for row in fly(shot)))
    write("level.csv", ["case", "x_m", "time_s", "drop_m", "speed_mps"],
          ([name, *row] for name, arrow in LEVEL.items() for row in fly_level(**arrow)))
    print(f"Python {platform.python_version()}, NumPy {np.__version__}, SciPy {scipy.__version__}: {len(shots)} flights", file=sys.stderr)


main()
