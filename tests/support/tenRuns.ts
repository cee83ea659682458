/**
 * Ten runs of a house that does not exist, written by hand so that every joined value can be worked out with pencil and
 * paper. Local time is UTC+2 all year.
 *
 * - R01 is the worked batch of the drying theory (500 kg at 12 %, green 730.7 kg at 44 %, malt at 4.5 %), with weather
 *   and readings.
 * - R02 fills two tanks from two lots and two beds; its final moisture is the mean of three samples.
 * - R03 is ten thousand times the worked yield of an encyclopaedia (42 g at 15 % to 32 g at 2 %); its final moisture is the
 *   later of two certificates.
 * - R04 and R05 share the load P4; R06 and R07 share a load that has no name. R04 and R05 are of two varieties.
 * - R08 is split over two kilns. R09 logged neither malt nor moisture. R10 is still in the kiln.
 */
const grainLots = `\
lot,grain,variety,crop_year,grower,received_on,mass_kg,moisture_pct,protein_dry_pct,note
L1,barley,Specimen,2025,First Grower,2025-09-01,8000,12,10.5,paid late
L2,barley,Specimen,2025,Second Grower,2025-09-10,6000,13,11.5,
03,wheat,Sampler,2025,,2025-10-01,5000,12.5,12,
`;

const steeping = `\
run,lot,tank,grain_in_kg,grain_moisture_pct,started_at,ended_at,water_c,wet_hours,air_rest_hours,steep_out_kg,steep_out_moisture_pct,chitted_pct,note
R01,L1,T1,500,,2026-01-05 08:00,2026-01-07 08:00,14,20,28,785.7,,90,first of the year
R02,L1,T1,300,,2026-01-12 08:00,2026-01-14 08:00,14,20,28,470,,80,
R02,L2,T2,200,13.5,2026-01-12 09:00,2026-01-14 10:00,16,22,27,315,,85,
R03,L2,T1,420,15,2026-01-19 08:00,2026-01-21 08:00,14,20,28,,43.5,,
R04,L1,T1,270,12,2026-01-26 08:00,2026-01-28 08:00,14,20,28,,,,
R05,03,T2,220,,2026-01-26 08:00,2026-01-28 08:00,14,18,30,,,,
R06,L1,T1,250,,2026-02-02 08:00,2026-02-04 08:00,14,20,28,,,,
R07,L1,T2,250,,2026-02-02 08:00,2026-02-04 08:00,14,20,28,,,,
R08,03,T1,500,,2026-02-09 08:00,2026-02-11 08:00,14,20,28,,,,
R09,L2,T1,500,,2026-02-16 08:00,2026-02-18 08:00,14,20,28,,,,
R10,L1,T1,500,,2026-02-23 08:00,2026-02-25 08:00,14,20,28,,,,
`;

const germination = `\
run,bed,started_at,ended_at,bed_grain_kg,room_c,bed_mean_c,bed_max_c,turns,acrospire_none,acrospire_to_quarter,acrospire_to_half,acrospire_to_three_quarters,acrospire_to_full,acrospire_over,green_moisture_pct,note
R01,B1,2026-01-07 08:00,2026-01-12 05:00,,15,17,20,9,0,2,8,30,55,5,44,
R02,B1,2026-01-14 08:00,2026-01-18 20:00,300,15,16,19,8,0,2,8,30,55,5,43,bed near the door
R02,B2,2026-01-14 10:00,2026-01-18 20:30,200,15,18,22,10,1,4,15,40,38,2,45,
R03,B1,2026-01-21 08:00,2026-01-25 05:00,,15,17,20,9,,,,,,,,
R04,B1,2026-01-28 08:00,2026-02-01 05:00,,15,17,20,9,,,,,,,44,
R05,B2,2026-01-28 08:00,2026-02-01 05:00,,15,17,20,9,,,,,,,45,
R06,B1,2026-02-04 08:00,2026-02-08 05:00,,15,17,20,9,0,5,10,,,,44,
R07,B2,2026-02-04 08:00,2026-02-08 05:00,,15,17,20,9,,,,,,,44,
R08,B1,2026-02-11 08:00,2026-02-15 05:00,,15,17,20,9,,,,,,,43,
R09,B1,2026-02-18 08:00,2026-02-22 05:00,,15,17,20,9,,,,,,,44,
R10,B1,2026-02-25 08:00,2026-03-01 05:00,,15,17,20,9,,,,,,,44,
`;

const kilning = `\
run,kiln,load,loaded_at,cure_started_at,heat_off_at,unloaded_at,bed_depth_cm,green_load_kg,ambient_rh_pct,ambient_c,ambient_basis,drying_set_c,cure_set_c,final_moisture_pct,malt_out_kg,cleaned_out_kg,rootlets_kg,energy_kwh,bag_code,note,hatch
R01,K1,P1,2026-01-12 06:00,2026-01-12 16:00,2026-01-12 18:30,2026-01-12 19:00,15.5,730.7,81,5.5,at_loading,48,80,4.5,428.5,,15,420,A-01,dried well,open
R02,K1,P2,2026-01-18 21:00,2026-01-19 08:30,,2026-01-19 11:30,15,735,,,,48,80,,430,,,,A-02,,
R03,K1,P3,2026-01-25 06:00,2026-01-25 15:00,,2026-01-25 18:15,14,600,70,8,,48,80,,340,320,16,390,A-03,,
R04,K1,P4,2026-02-01 06:00,2026-02-01 17:00,,2026-02-01 20:00,16,400,65,6,at_loading,48,80,4.4,232,,,410,A-04,,
R05,K1,P4,2026-02-01 06:00,2026-02-01 17:00,,2026-02-01 20:00,16,330,65,6,at_loading,48,80,4.8,190,,,410,A-05,,
R06,K2,,2026-02-08 06:00,,,2026-02-08 20:30,17,370,75,3,mean,48,80,4.6,215,,,,,,
R07,K2,,2026-02-08 06:00,,,2026-02-08 20:30,17,370,75,3,mean,48,80,5,216,,,,,,
R08,K1,P8a,2026-02-15 06:00,2026-02-15 14:00,,2026-02-15 17:00,10,450,60,12,at_loading,48,80,4.2,268,,,250,A-08,,
R08,K2,P8b,2026-02-15 07:00,2026-02-15 13:00,,2026-02-15 16:00,7,300,58,12.5,at_loading,48,80,4.8,177,,,180,A-08,,
R09,K1,P9,2026-02-22 06:00,2026-02-22 16:00,,2026-02-22 19:30,15,735,55,14,mean,48,80,,,,,430,A-09,,
R10,K1,P10,2026-03-01 06:00,,,,15.5,740,50,15,at_loading,48,80,,,,,,,,
`;

const moistureSamples = `\
run,place,moisture_pct
R02,door,4.2
R02,middle,4.6
R02,back,4.7
`;

const lab = `\
run,tested_on,laboratory,method_set,moisture_pct,extract_fine_dry_pct
R03,2026-02-10,Test Laboratory,EBC,2.4,80.1
R03,2026-02-12,Test Laboratory,EBC,2,80.3
`;

/** Three-hourly; between 23:00 on the 18th and 03:00 on the 19th a record is missing. */
const weather = `\
at,ambient_rh_pct,ambient_c
2026-01-12 05:00,80,4
2026-01-12 08:00,86,7
2026-01-12 11:00,74,10
2026-01-12 14:00,62,13
2026-01-12 17:00,68,10
2026-01-12 20:00,80,7
2026-01-18 20:00,90,2
2026-01-18 23:00,84,-1
2026-01-19 03:00,92,-2
2026-01-19 06:00,92,-2
2026-01-19 09:00,88,0
2026-01-19 12:00,80,3
`;

/** Hourly over the first load and an hour beyond it on either side. */
const readings = `\
kiln,at,air_on_c,air_off_c,heater_on
K1,2026-01-12 05:00,12.0,11.5,0
K1,2026-01-12 06:00,14.0,12.0,1
K1,2026-01-12 07:00,47.6,22.4,1
K1,2026-01-12 08:00,48.3,23.1,0
K1,2026-01-12 09:00,47.9,23.0,1
K1,2026-01-12 10:00,48.1,23.6,0
K1,2026-01-12 11:00,48.0,24.2,1
K1,2026-01-12 12:00,47.8,24.9,1
K1,2026-01-12 13:00,48.2,27.3,0
K1,2026-01-12 14:00,48.1,33.0,0
K1,2026-01-12 15:00,47.9,39.8,1
K1,2026-01-12 16:00,48.4,43.5,1
K1,2026-01-12 17:00,79.2,,1
K1,2026-01-12 18:00,80.6,74.1,0
K1,2026-01-12 19:00,41.0,40.2,0
K1,2026-01-12 20:00,20.0,20.0,0
`;

const customers = `\
customer,name,share,link_key,note
C1,First Customer,yes,marker-link-key,marker-customer-note
C2,Second Customer,no,,
`;

const orders = `\
order,customer,variety,mass_kg,due_on,note
O1,C1,Specimen,300,2026-02-01,marker-order-note
`;

const deliveries = `\
delivery,customer,run,shipped_on,mass_kg,package_kind,package_count,product,note
D1,C1,R01,2026-01-30,300,bag,12,,marker-delivery-note
`;

const events = `\
on,kind,scope,what,alters
2026-02-15,change,kiln,shallower beds,bed_depth
`;

const targets = `\
variety,measure,low,target,high
any,final_moisture_pct,4,4.5,5
`;

const house = `\
name = "House of ten runs"
time_zone = "Etc/GMT-2"
units = "metric"
date_order = "ymd"
altitude_m = 0

[[kilns]]
id = "K1"

[[kilns]]
id = "K2"
`;

/** By path inside a logs folder. */
export const tenRuns: Readonly<Record<string, string>> = {
  "house.toml": house,
  "grain-lots.csv": grainLots,
  "steeping.csv": steeping,
  "germination.csv": germination,
  "kilning.csv": kilning,
  "moisture-samples.csv": moistureSamples,
  "lab.csv": lab,
  "weather/2026.csv": weather,
  "readings/2026-01.csv": readings,
  "customers.csv": customers,
  "orders.csv": orders,
  "deliveries.csv": deliveries,
  "events.csv": events,
  "targets.csv": targets,
};

/** `2026-01-12 06:00` in this house's time, as milliseconds UTC. */
export const tenRunsAt = (local: string): number => Date.parse(`${local.replace(" ", "T")}:00+02:00`);
