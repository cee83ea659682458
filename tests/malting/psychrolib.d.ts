/** psychrolib ships no types; only what the tests ask of it stands here. */
declare module "psychrolib" {
  interface Psychrolib {
    readonly SI: unknown;
    SetUnitSystem(system: unknown): void;
    GetStandardAtmPressure(altitude: number): number;
    GetSatVapPres(celsius: number): number;
    GetHumRatioFromRelHum(celsius: number, relativeHumidity: number, pascals: number): number;
    GetMoistAirEnthalpy(celsius: number, humidityRatio: number): number;
    GetMoistAirVolume(celsius: number, humidityRatio: number, pascals: number): number;
    GetTDewPointFromVapPres(celsius: number, vapourPascals: number): number;
    GetTWetBulbFromHumRatio(celsius: number, humidityRatio: number, pascals: number): number;
  }
  const psychrolib: Psychrolib;
  export default psychrolib;
}
