// What a shop can build from sheet goods. The door refuses anything outside, naming field, range and value.

/** Outside of a box, each way. Smaller than a lunch box or longer than a panel saw is a slip of the keyboard. */
export const OUTSIDE_MM = { min: 60, max: 3_000 };
/** Upper depth of a wedge and knee of a clipped one: small, but still a wall. */
export const SHORT_WALL_MM = { min: 20, max: 3_000 };
/** From thin ply to a laminated top; thinner is not a box wall. */
export const THICKNESS_MM = { min: 3, max: 60 };
/** From foamed board to stone; metals are not cut here. */
export const DENSITY_KG_M3 = { min: 100, max: 3_000 };
export const MODULUS_GPA = { min: 0.1, max: 100 };
export const FINISH_MM = { min: 0, max: 25 };

/** Air that must remain between two facing walls, or no tool and no glue brush gets in. */
export const CLEAR_MIN_MM = 10;

/** Sharpest inside corner: below this, bevels leave a feather of wood. */
export const CORNER_MIN_RAD = (15 * Math.PI) / 180;
/** Neighbouring walls turn at least this much, or they are one wall. */
export const TURN_MIN_RAD = (2 * Math.PI) / 180;
/** From this inside angle on, a butt joint would leave a feather: both panels are mitred instead. */
export const MITRE_FROM_RAD = (135 * Math.PI) / 180;
/** Sharpest corner in which a slot port begins or turns: below, its panel would end in a feather too. */
export const SLOT_CORNER_MIN_RAD = (45 * Math.PI) / 180;
/** Tilt of an ordinary table saw or rail-guided saw; a hair above 45° for angles that come out of a division. */
export const SAW_TILT_RAD = Math.PI / 4 + 1e-9;

/** Net volumes that somebody may ask for. */
export const TARGET_LITRES = { min: 0.1, max: 5_000 };
/** Air that must be left when everything is deducted. */
export const NET_MIN_LITRES = 0.1;

/** No tool cuts a flatter bevel. Only boards of very unlike thickness, mitred at a flat corner, ask for one. */
export const BEVEL_MAX_RAD = (80 * Math.PI) / 180;

/** `Panel.holes` carries no more. */
export const HOLES_PER_PANEL = 60;

/** Inside of a port's pipe: from a bottle's neck to the largest drain pipe. */
export const TUBE_MM = { min: 15, max: 400 };
/** Clear height of a slot: below, the air sticks to the walls. */
export const SLOT_MM = { min: 8, max: 600 };
export const PORT_LENGTH_MM = { min: 10, max: 5_000 };
