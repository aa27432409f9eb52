#!/bin/sh
# Makes published/gnu-units.csv: amounts as the trade writes them, and their SI values by GNU units.
# Needs GNU units (Debian: apt-get install units). Run from anywhere: sh published/gnu-units.sh
set -eu
out="$(dirname "$0")/gnu-units.csv"

# amount as written | kind | the same amount in GNU units' own terms | SI unit
amounts() {
  cat <<'LIST'
3/8 in|length|(3/8) inch|m
1-1/2 in|length|1.5 inch|m
0.375"|length|0.375 inch|m
5' 6"|length|5 ft + 6 inch|m
19 ft 8 1/4 in|length|19 ft + 8.25 inch|m
375 thou|length|375 thou|m
30 mil|length|30 mil|m
9,5 mm|length|9.5 mm|m
25 µm|length|25 micron|m
28 ipm|speed|28 inch/min|m/s
35 in/min|speed|35 inch/min|m/s
710 mm/min|speed|710 mm/min|m/s
1.2 m/min|speed|1.2 m/min|m/s
12 mm/s|speed|12 mm/s|m/s
3 fpm|speed|3 ft/min|m/s
0.5 in/s|speed|0.5 inch/s|m/s
90 psi|pressure|90 psi|Pa
100 psig|pressure|100 psi|Pa
6.2 bar|pressure|6.2 bar|Pa
0.62 MPa|pressure|0.62 MPa|Pa
620 kPa|pressure|620 kPa|Pa
6 kgf/cm2|pressure|6 kgf/cm^2|Pa
850 A|current|850 A|A
1.2 kA|current|1.2 kA|A
42 V|voltage|42 V|V
15 mV|voltage|15 mV|V
2 min|time|2 min|s
1 h 20 min|time|1 hour + 20 min|s
400 ms|time|400 ms|s
45 deg|angle|45 degree|radian
60°|angle|60 degree|radian
2 AWG|area|circlearea(0.5 wiregauge(2))|m^2
4/0 AWG|area|circlearea(0.5 wiregauge(-3))|m^2
10 AWG|area|circlearea(0.5 wiregauge(10))|m^2
500 kcmil|area|500000 circularmil|m^2
250 MCM|area|250000 circularmil|m^2
95 mm²|area|95 mm^2|m^2
0.15 in2|area|0.15 inch^2|m^2
68 °F|temperature|tempF(68)|K
350 degF|temperature|tempF(350)|K
20 degC|temperature|tempC(20)|K
20 scfm|air_flow|20 ft^3/min|m^3/s
600 L/min|air_flow|600 L/min|m^3/s
90 m3/h|air_flow|90 m^3/hour|m^3/s
60 Nm3/h|air_flow|60 (m^3/hour) (101325/100000) (293.15/273.15)|m^3/s
20 hp|power|20 hp|W
15 kW|power|15 kW|W
95 %|share|95 percent|1
750 L|volume|750 liter|m^3
80 gal|volume|80 gallon|m^3
26.5 ft3|volume|26.5 ft^3|m^3
0.25 mohm|resistance|0.25 milliohm|ohm
4 V/100A|resistance|4 V/(100 A)|ohm
LIST
}

{
  echo "# SI values by $(units --version | head -n 1) (Debian), printed to 15 digits; made by published/gnu-units.sh."
  echo "# Air flow: a standard cubic foot counts as a cubic foot at the reference the engine states; Nm3 is brought to it by the ideal gas law."
  echo "# written|kind|gnu_expression|si_unit|si_value"
  amounts | while IFS= read -r line; do
    written=${line%%|*}
    rest=${line#*|}
    kind=${rest%%|*}
    rest=${rest#*|}
    expression=${rest%|*}
    unit=${rest##*|}
    echo "$written|$kind|$expression|$unit|$(units -t -o '%.15g' "$expression" "$unit")"
  done
} >"$out"
