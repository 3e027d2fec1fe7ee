/** One choice in a select, combo box or radio group. */
export type Option<Id extends string = string> = {
  readonly id: Id;
  readonly label: string;
  /** What tells it from its neighbours: a size, a stock count, a price. */
  readonly detail?: string;
  readonly isDisabled?: boolean;
};
