/** The whole evening as one bench test: the captures above as sweeps, steps and a transfer, and one discharge. */
export const eveningPlan = `# Invented demonstration data, no real inverter: three donated inverters tested before they are lent.
# sineassay bench captures/plan.yaml

units:
  - name: red
    label: Inverter A (red case)
    claims:
      - pure sine
      - 120 V ±5 %
      - 60 Hz ±0.5 Hz
      - THD < 5 %
      - power 600 W
    captures:
      - file: a-red-000w.csv
        load: no load
        battery: 13.1 V
      - file: a-red-300w.csv
        load: 300 W
        battery: 12.7 V
      - file: a-red-450w-current.csv
        load: measured
        battery: 12.5 V
      - file: a-red-600w.csv
        load: 600 W
        battery: 12.3 V
      - file: a-red-900w.csv
        load: 900 W
        battery: 11.6 V
        note: overload, above what the box promises
    steps:
      - file: a-red-step-on.csv
        from: 0 W
        to: 600 W
        resistive: true
      - file: a-red-step-off.csv
        from: 600 W
        to: 0 W
        resistive: true
    energy:
      - dcWh: 637 ± 2 %
        acWh: 571 ± 2 %
        ratedWh: 730
        note: the library's test battery, from full to cut-off at 146 W

  - name: blue
    label: Inverter B (blue case)
    claims:
      - pure sine
      - 115 V ±10 %
      - power 600 W
    captures:
      - file: b-blue-000w.csv
        load: no load
      - file: b-blue-300w.csv
        load: 300 W
      - file: b-blue-600w.csv
        load: 600 W

  - name: green
    label: Inverter C (green case)
    claims:
      - pure sine
      - 230 V ±5 %
      - THD < 8 %
      - power 400 W
      - transfer < 20 ms
    captures:
      - file: c-green-000w.csv
        load: no load
      - file: c-green-150w.csv
        load: 150 W
      - file: c-green-400w.csv
        load: 400 W
        scale: 200          # saved at the scale of the 1:200 probe
    transfers:
      - file: c-green-transfer.csv
`;
