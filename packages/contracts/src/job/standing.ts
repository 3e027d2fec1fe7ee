// No schema here: pages that name a standing need not send the validator.

/** Where a job stands, in the order in which it usually goes. It follows from what happened; nobody sets it. */
export const STANDINGS = [
  'enquiry',
  'surveyed',
  'priced',
  'quoted',
  'approved',
  'in-bay',
  'handed-over',
  'declined',
] as const;
export type Standing = (typeof STANDINGS)[number];

/** In the shop's words. */
export const STANDING_WORDS: Record<Standing, string> = {
  enquiry: 'Enquiry',
  surveyed: 'Measured',
  priced: 'Priced',
  quoted: 'With the customer',
  approved: 'Approved',
  'in-bay': 'In the bay',
  'handed-over': 'Handed over',
  declined: 'Not going ahead',
};
