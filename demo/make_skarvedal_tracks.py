#!/usr/bin/env python3
"""Makes the tracks of the invented valley of Skarvedal. Nothing here is surveyed: the valley does not exist, and its
coordinates lie in the open Norwegian Sea, so that nobody can walk by them. Run from this folder; same script, same files.

skarvedal-round.gpx  the planned round: ferry house, hut, pass, road head, 24 km
skarvedal-down.gpx   from the cut above the hut down to the ferry house, 7.2 km
"""
import math

LAT, LON = 62.52, 3.10  # the ferry house, in open sea
# km along the round, metres east, metres north, height
ROUND = [(0, 0, 0, 4), (2, 900, 1700, 60), (4.5, 2100, 3900, 210), (7.2, 3000, 6300, 540), (9.0, 4300, 7500, 760),
         (12.0, 6700, 9200, 1120), (14.5, 9000, 10000, 940), (18.0, 12200, 9700, 620), (21.0, 14700, 8400, 300), (24.0, 17200, 7000, 120)]


def between(km):
    for (a, ae, an, ah), (b, be, bn, bh) in zip(ROUND, ROUND[1:]):
        if km <= b:
            f = (km - a) / (b - a)
            s = (1 - math.cos(math.pi * f)) / 2  # gentle at the bends
            return ae + f * (be - ae), an + f * (bn - an), ah + s * (bh - ah)
    return ROUND[-1][1:]


def points(from_km, to_km, step):
    n = round(abs(to_km - from_km) / step)
    for i in range(n + 1):
        km = from_km + (to_km - from_km) * i / n
        east, north, height = between(km)
        # a path winds, and heights of receivers wander: both made by sines, not by chance
        east += 60 * math.sin(km * 9.1)
        north += 45 * math.cos(km * 7.3) - 45
        height += 1.6 * math.sin(km * 31.0) + 0.8 * math.sin(km * 57.0)
        lat = LAT + north / 111_400
        yield lat, LON + east / (111_320 * math.cos(math.radians(lat))), max(0.0, height)


def write(name, title, from_km, to_km, step=0.03):
    with open(name, "w", encoding="utf-8", newline="\n") as out:
        out.write('<?xml version="1.0" encoding="UTF-8"?>\n<gpx version="1.1" creator="make_skarvedal_tracks.py" xmlns="http://www.topografix.com/GPX/1/1">\n')
        out.write(f"  <trk><name>{title}</name><desc>Invented: this valley does not exist.</desc><trkseg>\n")
        for lat, lon, height in points(from_km, to_km, step):
            out.write(f'    <trkpt lat="{lat:.6f}" lon="{lon:.6f}"><ele>{height:.1f}</ele></trkpt>\n')
        out.write("  </trkseg></trk>\n</gpx>\n")


write("skarvedal-round.gpx", "Skarvedal round (invented)", 0, 24)
write("skarvedal-down.gpx", "Above the hut to the ferry house (invented)", 7.2, 0)


def place(km):
    lat, lon, _ = list(points(km, km + 0.03, 0.03))[0]
    return f"{lat:.5f}, {lon:.5f}"


if __name__ == "__main__":
    for km in (4.5, 9.0, 14.5, 21.0):
        print(km, place(km))
