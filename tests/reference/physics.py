#!/usr/bin/env python3
"""Writes tests/data/physics-reference.csv: our quantities as general scientific libraries compute them.

Run by hand; the Rust tests read the committed table. Each row names the library and how it came to the number, by another
road than the formula under test where there is one: EPANET's own solver, numeric integration, a stationary distribution.

    python3 -m venv venv
    venv/bin/pip install fluids==1.3.1 ht==1.2.0 scipy==1.17.1 numpy==2.4.6 metpy==1.7.1 filterpy==2.0.0 \\
        pyworkforce==0.5.1 wntr==1.5.0 six setuptools
    venv/bin/python tests/reference/physics.py
"""

import csv
import itertools
import json
import math
import os
import pathlib
import tempfile

import filterpy.kalman
import fluids
import ht
import metpy.calc
import numpy as np
import wntr
from metpy.units import units
from pyworkforce.queuing import ErlangC
from scipy import integrate, optimize, stats

OUT = pathlib.Path(__file__).parent.parent / "data" / "physics-reference.csv"
FT, IN, PSI = 0.3048, 0.0254, 6894.757293168
GPM = 3.785411784e-3 / 60
LB_GAL = 8.34
rows = []


def row(library, quantity, expected, tolerance, **inputs):
    rows.append([quantity, json.dumps(inputs), f"{expected:.9g}", f"{tolerance:.3g}", library])


# ---- water -------------------------------------------------------------------------------------------------------------


def epanet(headloss, length_ft, flow_gpm, id_in, rough, nu_ft2_s):
    """Runs one pipe between a reservoir and a junction through EPANET 2.2; returns the loss in psi."""
    net = wntr.network.WaterNetworkModel()
    net.options.hydraulic.headloss = headloss
    net.options.hydraulic.accuracy = 1e-8
    net.options.hydraulic.viscosity = nu_ft2_s / 1.1e-5
    net.options.hydraulic.inpfile_units = "GPM"
    net.add_reservoir("spigot", base_head=200.0)
    net.add_junction("trailer", base_demand=flow_gpm * GPM, elevation=0.0)
    net.add_pipe("hose", "spigot", "trailer", length_ft * FT, id_in * IN, rough, 0.0)
    with tempfile.TemporaryDirectory() as folder:
        result = wntr.sim.EpanetSimulator(net).run_sim(file_prefix=os.path.join(folder, "run"))
    return (200.0 - float(result.node["head"]["trailer"].iloc[0])) / FT * 0.4333


for length, flow, bore in itertools.product([50, 100, 200], [3, 8, 12], [0.625, 0.75, 1.0]):
    v = flow * GPM / (math.pi / 4 * (bore * IN) ** 2)
    re = fluids.Reynolds(V=v, D=bore * IN, nu=1.1e-5 * FT**2)
    row("fluids.Reynolds", "reynolds", re, re * 1e-4, flow_gpm=flow, id_in=bore, nu_ft2_s=1.1e-5)
    f = fluids.friction_factor(Re=re, eD=6e-5 / bore, Method="Colebrook")
    loss = f * length / (bore / 12) * (v / FT) ** 2 / 2 / 32.174 * 0.4333
    row("fluids.friction_factor Colebrook", "hose_loss_darcy_psi", loss, loss * 2e-3,
        length_ft=length, flow_gpm=flow, id_in=bore, rough_in=6e-5, nu_ft2_s=1.1e-5)
    if length == 100 and re > 4000:
        loss = epanet("D-W", length, flow, bore, 6e-5 * IN, 1.1e-5)
        row("wntr EPANET 2.2 D-W", "hose_loss_darcy_psi", loss, loss * 0.01, engine="EPANET D-W",
            length_ft=length, flow_gpm=flow, id_in=bore, rough_in=6e-5, nu_ft2_s=1.1e-5)
    loss = epanet("H-W", length, flow, bore, 140.0, 1.1e-5)
    row("wntr EPANET 2.2 H-W", "hose_loss_hazen_williams_psi", loss, loss * 0.01 + 0.002,
        length_ft=length, flow_gpm=flow, id_in=bore, C=140)
    minor = fluids.dP_from_K(10, rho=999.0, V=v) / PSI
    row("fluids.dP_from_K", "minor_loss_psi", minor, minor * 5e-3, K=10, flow_gpm=flow, id_in=bore)

for flow in [0.2, 0.5]:  # laminar
    v = flow * GPM / (math.pi / 4 * IN**2)
    re = fluids.Reynolds(V=v, D=IN, nu=1.1e-5 * FT**2)
    loss = fluids.friction_laminar(re) * 100 * 12 * (v / FT) ** 2 / 2 / 32.174 * 0.4333
    row("fluids.friction_laminar", "hose_loss_darcy_psi", loss, loss * 2e-3 + 1e-6,
        length_ft=100, flow_gpm=flow, id_in=1.0, rough_in=6e-5, nu_ft2_s=1.1e-5)

for n, p in [(8, 0.2), (10, 0.15), (4, 0.3), (12, 0.1), (20, 0.1), (6, 0.5), (60, 0.07), (1, 0.5)]:
    for q in [0.9, 0.99, 0.999]:
        row("scipy.stats.binom.ppf", "simultaneous_fixtures_p99", stats.binom.ppf(q, n, p), 0, n=n, p=p, q=q)


def quantile_of_sum(groups, q, step=0.05):
    """Convolves the groups on a fine grid of flows."""
    pmf = np.array([1.0])
    for n, p, flow in groups:
        spread = np.zeros(int(round(n * flow / step)) + 1)
        for k in range(n + 1):
            spread[int(round(k * flow / step))] += stats.binom.pmf(k, n, p)
        pmf = np.convolve(pmf, spread)
    return int(np.argmax(np.cumsum(pmf) >= q)) * step


for groups in [
    [[8, 0.2, 3.0], [8, 0.15, 0.5]],
    [[3, 0.2, 3.0], [2, 0.15, 0.5]],
    [[12, 0.2, 3.0], [6, 0.15, 0.5], [4, 0.1, 1.0]],
    [[5, 0.4, 1.6], [5, 0.3, 0.25]],
]:
    for q in [0.5, 0.99]:
        row("numpy.convolve of scipy.stats.binom", "mixed_demand_p99_gpm", quantile_of_sum(groups, q), 1e-6,
            groups=groups, q=q)


def hazen_williams(length, flow, bore):
    return 4.727 * length * (flow / 448.831) ** 1.852 / (140**1.852 * (bore / 12) ** 4.871) * 0.4333


for static, length, bore, rise in itertools.product([40, 60], [50, 200], [0.625, 0.75, 1.0], [-5, 0, 10]):
    area = math.pi / 4 * (bore / 12) ** 2

    def left(q):
        v = q / 448.831 / area
        return (static - hazen_williams(length, q, bore) - 0.4333 * (10 * v * v / 2 / 32.174 + rise) - 20)

    row("scipy.optimize.brentq", "max_flow_gpm_at_residual", optimize.brentq(left, 1e-6, 500), 0.01,
        static_psi=static, length_ft=length, id_in=bore, rise_ft=rise, K=10, C=140, residual_psi=20)

# ---- cold --------------------------------------------------------------------------------------------------------------


def kelvin(f):
    return (f - 32) / 1.8 + 273.15


def film(air_f, surface_f):
    t = (kelvin(air_f) + kelvin(surface_f)) / 2
    k = fluids.ATMOSPHERE_1976.thermal_conductivity(t)
    mu = fluids.ATMOSPHERE_1976.viscosity(t)
    rho = 101325 / (287.053 * t)
    return t, k, mu / rho, 1005 * mu / k


def crossflow(od_in, wind_mph, air_f, surface_f=32.0):
    t, k, nu, pr = film(air_f, surface_f)
    re = wind_mph * 0.44704 * od_in * IN / nu
    return ht.Nu_cylinder_Churchill_Bernstein(Re=re, Pr=pr) * k / (od_in * IN)


def natural(od_in, air_f, surface_f=32.0):
    t, k, nu, pr = film(air_f, surface_f)
    grashof = 9.80665 / t * abs(surface_f - air_f) / 1.8 * (od_in * IN) ** 3 / nu**2
    return ht.Nu_horizontal_cylinder_Churchill_Chu(Pr=pr, Gr=grashof) * k / (od_in * IN)


for air in [-20, 0, 20, 31, 50]:
    k = fluids.ATMOSPHERE_1976.thermal_conductivity(kelvin(air))
    row("fluids.ATMOSPHERE_1976", "air_conductivity_W_mK", k, 2e-5, air_F=air)
    for od in [0.875, 1.0, 2.0]:
        h = natural(od, air)
        row("ht.Nu_horizontal_cylinder_Churchill_Chu", "h_natural_W_m2K", h, h * 2e-3,
            od_in=od, air_F=air, surface_F=32)
        for wind in [1, 10, 35]:
            h = crossflow(od, wind, air)
            row("ht.Nu_cylinder_Churchill_Bernstein", "h_crossflow_W_m2K", h, h * 2e-3,
                od_in=od, wind_mph=wind, air_F=air, surface_F=32)


def hose_resistance(bore, od, foam, h):
    """K for each watt through one metre, from ht's series of cylinders."""
    layers = [((od - bore) / 2 * IN, 0.16)] + ([(foam * IN, 0.04)] if foam else [])
    ends = ht.cylindrical_heat_transfer(Ti=274.15, To=273.15, hi=1e9, ho=h, Di=bore * IN,
                                        ts=[t for t, _ in layers], ks=[k for _, k in layers])
    return 1.0 / ends["UA"]


for bore, foam, air, wind in itertools.product([0.625, 0.75, 1.0], [0, 0.5], [-10, 10, 28], [0, 10, 25]):
    od = bore + 0.25
    outer = od + 2 * foam
    h = max(crossflow(outer, wind, air) if wind else 0.0, natural(outer, air)) + 4.5
    resistance = hose_resistance(bore, od, foam, h)
    heat = 999.8 * 4210 * math.pi * (bore * IN / 2) ** 2

    def reached(_, t):
        return t[0] - 32.0

    reached.terminal = True
    run = integrate.solve_ivp(lambda _, t: -(t - air) / (resistance * heat), (0, 1e7), [50.0],
                              events=reached, rtol=1e-9, atol=1e-9)
    cooled = run.t_events[0][0] / 3600
    row("scipy.integrate.solve_ivp, ht films and cylinders", "hose_hours_to_32F", cooled, cooled * 5e-3,
        id_in=bore, insulation_in=foam, air_F=air, wind_mph=wind, water_F=50)
    solid = cooled + 999.8 * 333550 * math.pi * (bore * IN / 2) ** 2 * resistance / ((32 - air) / 1.8) / 3600
    row("scipy.integrate.solve_ivp, ht films and cylinders", "hose_hours_to_solid", solid, solid * 5e-3,
        id_in=bore, insulation_in=foam, air_F=air, wind_mph=wind, water_F=50)

for r_value, air, heater in itertools.product([0.35, 0.86, 4.25], [-20, 0, 20], [0, 100, 400]):
    loss = 59.3 / r_value
    settles = air + 3.412 * heater / loss
    row("heat balance, numpy", "tank_equilibrium_F", settles, 1e-3, gal=200, area_ft2=59.3,
        R_ft2Fh_Btu=r_value, start_F=50, air_F=air, heater_W=heater)
    if settles < 31.5:
        def reached(_, t):
            return t[0] - 32.0

        reached.terminal = True
        run = integrate.solve_ivp(
            lambda _, t: (3.412 * heater - loss * (t - air)) / (LB_GAL * 200), (0, 1e5), [50.0],
            events=reached, rtol=1e-9, atol=1e-9)
        row("scipy.integrate.solve_ivp", "tank_hours_to_32F", run.t_events[0][0], run.t_events[0][0] * 1e-4 + 1e-6,
            gal=200, area_ft2=59.3, R_ft2Fh_Btu=r_value, start_F=50, air_F=air, heater_W=heater)

for flow, air in itertools.product([0.1, 0.25, 1.0], [-10, 10]):
    run = integrate.solve_ivp(
        lambda _, t: -(t - air) / 1.8 / 0.52945 * 3.412 / (flow * 500.4), (0, 50 * FT), [50.0], rtol=1e-9, atol=1e-9)
    row("scipy.integrate.solve_ivp", "trickle_outlet_F", run.y[0][-1], 0.01,
        inlet_F=50, air_F=air, length_ft=50, flow_gpm=flow, R_mK_W=0.52945)

for air, wind in itertools.product([-30, -5, 20, 40], [4, 10, 40]):
    chill = metpy.calc.windchill(air * units.degF, wind * units.mph).to("degF").magnitude
    row("metpy.calc.windchill", "wind_chill_F", float(chill), 0.1, air_F=air, wind_mph=wind)
for air, humidity in itertools.product([82, 90, 100, 110], [5, 12, 40, 60]):
    index = metpy.calc.heat_index(np.array([air]) * units.degF, np.array([humidity]) * units.percent)
    row("metpy.calc.heat_index", "heat_index_F", float(index.to("degF").magnitude[0]), 0.05, air_F=air, rh_pct=humidity)
for air, humidity in [(82, 90), (86, 95)]:
    index = metpy.calc.heat_index(np.array([air]) * units.degF, np.array([humidity]) * units.percent)
    row("metpy.calc.heat_index", "heat_index_F", float(index.to("degF").magnitude[0]), 0.05, air_F=air, rh_pct=humidity)

# ---- tanks, people, level ----------------------------------------------------------------------------------------------

for diameter, length, share in itertools.product([36, 48], [96, 120], [0.125, 0.25, 0.5, 0.75, 0.875]):
    tank = fluids.TANK(D=diameter * IN, L=length * IN, horizontal=True)
    volume = tank.V_from_h(share * diameter * IN)
    row("fluids.TANK", "cyl_gal", volume / 3.785411784e-3, 0.02,
        diameter_in=diameter, length_in=length, level_in=share * diameter)
    row("fluids.TANK", "cyl_pct_full_at_depth_fraction", 100 * volume / tank.V_total, 0.01,
        diameter_in=diameter, length_in=length, depth_fraction=share)
    row("fluids.TANK", "cyl_depth_fraction_at_pct_full", share, 1e-4, pct_full=100 * volume / tank.V_total)


def stationary(servers, arrivals_h, service_s, most=6000):
    """Stationary distribution of the birth-death chain, cut far out: chance of waiting and mean number in line."""
    log_p = [0.0]
    for n in range(1, most):
        log_p.append(log_p[-1] + math.log(arrivals_h / 3600) - math.log(min(n, servers) / service_s))
    p = np.exp(np.array(log_p) - max(log_p))
    p /= p.sum()
    line = sum((n - servers) * p[n] for n in range(servers, most))
    return float(p[servers:].sum()), float(line / (arrivals_h / 3600))


for servers, arrivals, service in [(2, 40, 120), (3, 60, 90), (4, 80, 90), (4, 120, 90), (4, 140, 90), (4, 150, 90),
                                   (5, 240, 60), (6, 180, 90), (8, 280, 90), (1, 30, 60), (20, 700, 90)]:
    wait, mean = stationary(servers, arrivals, service)
    row("birth-death chain, numpy", "erlang_c_wait_prob", wait, 1e-6,
        servers=servers, arrivals_h=arrivals, service_s=service)
    row("birth-death chain, numpy", "mmc_mean_wait_s", mean, mean * 1e-5 + 1e-6,
        servers=servers, arrivals_h=arrivals, service_s=service)
    erlang = ErlangC(transactions=arrivals, aht=service / 60, interval=60, asa=1 / 3)
    row("pyworkforce.ErlangC", "erlang_c_wait_prob", erlang.waiting_probability(positions=servers), 1e-6,
        servers=servers, arrivals_h=arrivals, service_s=service)

for readings, step, rate in [
    ([[2, 12.5], [4, 25.0], [6, 25.0], [8, 37.5]], 12.5, 4.0),
    ([[4, 25.0], [8, 50.0]], 25.0, 5.0),
    ([[1, 0.0], [1.5, 12.5], [6, 25.0], [6, 25.0], [9, 62.5]], 12.5, 6.0),
]:
    kf = filterpy.kalman.KalmanFilter(dim_x=2, dim_z=1)
    kf.x = np.array([[2.0], [rate]])
    kf.P = np.diag([4.0, 2.56])
    kf.H = np.array([[1.0, 0.0]])
    kf.R = np.array([[step**2 / 12]])
    at = 0.0
    for when, reading in readings:
        dt, at = when - at, when
        kf.F = np.array([[1, dt], [0, 1]])
        kf.Q = 0.02 * np.array([[dt**3 / 3, dt**2 / 2], [dt**2 / 2, dt]])
        kf.predict()
        kf.update(np.array([[reading]]))
    given = dict(readings=readings, step_pct=step, level0=2, rate0=rate, var_level0=4, var_rate0=2.56, q=0.02)
    for name, value in [("kf_level_pct", kf.x[0, 0]), ("kf_rate_pct_h", kf.x[1, 0]), ("kf_var_level", kf.P[0, 0]),
                        ("kf_cov", kf.P[0, 1]), ("kf_var_rate", kf.P[1, 1])]:
        row("filterpy.kalman.KalmanFilter", name, float(value), abs(float(value)) * 1e-6, **given)
    for p in [0.1, 0.5]:
        z = stats.norm.ppf(1 - p)

        def short(h):
            var = kf.P[0, 0] + 2 * h * kf.P[0, 1] + h * h * kf.P[1, 1] + 0.02 * h**3 / 3
            return kf.x[0, 0] + kf.x[1, 0] * h + z * math.sqrt(var) - 85

        row("scipy.optimize.brentq", "hours_to_level_quantile", optimize.brentq(short, 0, 200), 1e-4,
            state=[float(kf.x[0, 0]), float(kf.x[1, 0])], cov=kf.P.tolist(), q=0.02, threshold_pct=85, p=p)

for mean, sd, low, high in [(40, 10, 43.75, 56.25), (40, 10, 87.5, 100), (5, 20, 0, 12.5), (50, 3, 43.75, 56.25),
                            (90, 4, 62.5, 75)]:
    cut = stats.truncnorm.mean((low - mean) / sd, (high - mean) / sd, loc=mean, scale=sd)
    row("scipy.stats.truncnorm.mean", "interval_posterior_mean", float(cut), 1e-4,
        prior_mean=mean, prior_sd=sd, lo=low, hi=high)

OUT.parent.mkdir(exist_ok=True)
with OUT.open("w", newline="") as file:
    writer = csv.writer(file, lineterminator="\n")
    writer.writerow(["quantity", "inputs", "expected", "tolerance", "library"])
    writer.writerows(rows)
print(len(rows), "rows")
