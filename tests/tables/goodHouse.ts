import type { FileTexts } from "./logsOf.ts";

/**
 * Logs of a house in which nothing is wrong, with everything that the format allows: two tanks and two beds to a run,
 * two runs in one load, a run split over two loads, a load under way, blanks, offsets, UTC readings in two files.
 */
export const goodHouse: FileTexts = {
  "house.toml": 'name = "Good"\ntime_zone = "America/Chicago"\n[[kilns]]\nid = "K1"\n',
  "grain-lots.csv":
    "lot,grain,variety,crop_year,mass_kg,moisture_pct\n001,wheat,First,2025,9000,12\n002,barley,Second,2025,9000,12.5\n",
  "steeping.csv": `run,lot,tank,grain_in_kg,grain_moisture_pct,started_at,ended_at,water_c,steep_out_kg
R1,001,T1,200,,2026-03-01 06:00,2026-03-02 06:00,14,300
R1,001,T2,200,,2026-03-01 07:00,2026-03-02 08:00,14,301
R2,002,T1,300,12.4,2026-03-02 12:00,2026-03-03 14:00,14,
R3,002,T1,300,12.4,2026-03-20 12:00,,,
`,
  "germination.csv": `run,bed,started_at,ended_at,bed_grain_kg,acrospire_none,acrospire_to_quarter,acrospire_to_half,acrospire_to_three_quarters,acrospire_to_full,acrospire_over
R1,B1,2026-03-02 06:30,2026-03-06 06:00,300,1,2,10,40,45,2
R1,B2,2026-03-02 08:10,2026-03-06 06:30,300,0,2,10,40,46,2
R2,B3,2026-03-03 14:00,2026-03-06 07:00,,,,,,,
`,
  "kilning.csv": `run,kiln,load,loaded_at,cure_started_at,heat_off_at,unloaded_at,bed_depth_cm,final_moisture_pct,malt_out_kg,cleaned_out_kg,rootlets_kg
R1,K1,A,2026-03-06 08:00,2026-03-06 18:00,2026-03-06 21:00,2026-03-06 21:30,15,4.4,160,155,5
R2,K1,A,2026-03-06 08:00,2026-03-06 18:00,2026-03-06 21:00,2026-03-06 21:30,15,4.4,240,,8
R1,K1,B,2026-03-07 08:00,2026-03-07 18:00,2026-03-07 18:00,2026-03-07 21:30,15,4.5,162,156,5
R3,K1,C,2026-03-26 08:00,,,,15,,,,
`,
  "moisture-samples.csv": "run,place,moisture_pct\nR1,north,4.4\nR1,north,4.4\nR1,south,4.6\n",
  "lab.csv": "run,tested_on,colour_ebc\nR1,2026-03-12,3.5\nR1,2026-03-13,3.6\n",
  "orders.csv": "order,customer,variety,mass_kg,due_on\nO1,C1,First,100,2027-03-08\n",
  "deliveries.csv":
    "delivery,customer,run,shipped_on,mass_kg,product\nD1,C1,R1,2026-03-15,300,malt\nD1,C1,R1,2026-03-15,10,rootlets\nD2,C1,R1,2026-03-15,11,\n",
  "customers.csv": "customer,share\nC1,yes\n",
  "events.csv": "on,kind,scope,what,alters\n2026-03-01,change,kiln,shallower bed,bed_depth\n",
  "targets.csv": "variety,measure,low,target,high\nany,final_moisture_pct,4,4.5,5\nFirst,colour_srm,,2,\n",
  "logger-checks.csv": "kiln,at,probe,reference_c,reading_c\nK1,2026-03-01 06:00,air_on,0,0.1\n",
  "readings/one.csv": readingsOf(0, 300),
  "readings/two.csv": readingsOf(300, 810),
};

/** A reading a minute from the loading of load A. */
function readingsOf(from: number, to: number): string {
  let text = "kiln,at_utc,air_on_c,fan_on\n";
  for (let minute = from; minute < to; minute++) {
    const at = new Date(Date.UTC(2026, 2, 6, 14, minute)).toISOString().slice(0, 19);
    text += `K1,${at},${(50 + (minute % 12) / 10).toFixed(1)},1\n`;
  }
  return text;
}
