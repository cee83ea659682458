import type { APIRoute, GetStaticPaths } from "astro";
import { strToU8, zipSync } from "fflate";
import houseToml from "../../data/templates/house.toml?raw";
import { newHouseFiles } from "../tables/newHouse.ts";
import type { UnitSystem } from "../units/unitSystem.ts";

// Empty logs with their README, as `npm run new-house` writes them, for whoever has no terminal.

export const getStaticPaths: GetStaticPaths = () => [
  { params: { newHouse: "new-house" }, props: { units: "metric" } },
  { params: { newHouse: "new-house-us" }, props: { units: "us" } },
];

/** The same day in every archive, so that the same files make the same bytes; archives know no earlier year than 1980. */
const MADE = new Date(1980, 0, 1);

export const GET: APIRoute<{ units: UnitSystem }> = ({ props }) => {
  const files = [...newHouseFiles(houseToml, props.units)].map(
    ([path, text]) => [`logs/${path}`, strToU8(text)] as const,
  );
  return new Response(zipSync(Object.fromEntries(files), { mtime: MADE, level: 9 }), {
    headers: { "content-type": "application/zip" },
  });
};
