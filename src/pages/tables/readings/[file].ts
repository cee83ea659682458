import type { APIRoute, GetStaticPaths } from "astro";
import { getBuilt } from "../../../report/atBuild.ts";

// One file of logger readings a kiln load.

const FOLDER = "readings/";

export const getStaticPaths: GetStaticPaths = async () => {
  const { files } = await getBuilt();
  const readings = [...files].filter(([file]) => file.startsWith(FOLDER));
  return readings.map(([file, bytes]) => ({ params: { file: file.slice(FOLDER.length) }, props: { bytes } }));
};

export const GET: APIRoute<{ bytes: Uint8Array<ArrayBuffer> }> = ({ props }) => new Response(props.bytes);
