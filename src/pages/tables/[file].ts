import type { APIRoute, GetStaticPaths } from "astro";
import { getBuilt } from "../../report/atBuild.ts";

// The published tables, the list of them and the built report: what a page that comes alive fetches.

export const getStaticPaths: GetStaticPaths = async () => {
  const { files } = await getBuilt();
  return [...files]
    .filter(([file]) => !file.includes("/"))
    .map(([file, bytes]) => ({ params: { file }, props: { bytes } }));
};

export const GET: APIRoute<{ bytes: Uint8Array<ArrayBuffer> }> = ({ props }) => new Response(props.bytes);
