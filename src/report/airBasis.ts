/** `at_loading`: air known when the kiln was loaded. `mean`: air averaged over the load. Never mixed in one fit. */
export type AirBasis = "at_loading" | "mean";
