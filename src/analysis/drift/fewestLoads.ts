/** A change needs this many loads on either side of a step, and from its onset on in a creep: fewer are odd loads. */
export const fewestLoadsASide = 3;

/** Below this many loads no change is looked for: three a side would leave next to nothing to judge the scatter by. */
export const fewestLoads = 8;
