// No schema here: the screen that lists them need not send the validator.

/** Faces of a straight box; a leaning front or back keeps its name. */
export const BOX_FACES = ['front', 'back', 'top', 'bottom', 'left', 'right', 'slopes'] as const;
export type BoxFaceName = (typeof BOX_FACES)[number];
