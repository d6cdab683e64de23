/** How large a file of text may be. */

/** Bytes: programs write drawings of half the size; what is larger is refused before it fills the memory. */
export const MAX_FILE_SIZE = 100_000_000;

/** Bytes of a `tombolo.json`: ten thousand findings let pass take a tenth of it. */
export const MAX_CONFIG_SIZE = 5_000_000;
