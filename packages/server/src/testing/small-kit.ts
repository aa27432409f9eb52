/** A kit with the least that one needs, for tests that need a whole one. */
export const SMALL_KIT = `furrow_kit: 1
title: Two sources and a roll of hose
sources:
  - name: rectifier
    count: 2
    no_load_voltage: 80 V
    slope: 30 mohm
    rating:
      - { current: 800 A, voltage: 44 V, duty: 100 % }
leads:
  - { name: electrode lead, side: electrode, size: 120 mm2, parallels: 2, length: 20 m }
  - { name: work lead, side: work, size: 120 mm2, parallels: 2, length: 20 m }
air:
  compressor:
    delivery:
      - { pressure: 700 kPa, flow: 3000 L/min }
  receiver: { volume: 1000 L, cut_in: 600 kPa, cut_out: 700 kPa }
  path:
    - { name: drop, kind: hose, bore: 25 mm, length: 20 m }
    - { name: regulator, kind: regulator, set: 590 kPa, conductance_dm3_per_s_bar: 40 }
    - { name: whip, kind: hose, bore: 19 mm, length: 5 m }
  torch: { flow: 900 L/min, flow_at: 550 kPa }
`;
