// No schema here: the screen that words findings need not send the validator.
import type { BoxFindingCode } from './box-finding.ts';

/** How much a finding weighs: `stop` = cannot be built so, `warn` = somebody must decide, `note` = good to know. */
export const BOX_FINDING_LEVELS = {
  'driver-meets-wall': 'stop',
  'magnet-room-short': 'warn',
  'side-vent-room-short': 'warn',
  'driver-larger-than-baffle': 'stop',
  'magnet-larger-than-cutout': 'warn',
  'driver-near-edge': 'warn',
  'drivers-close': 'warn',
  'recess-thin': 'warn',
  'fixing-at-cutout': 'warn',
  'grille-close': 'warn',
  'driver-displacement-missing': 'warn',
  'driver-mass-missing': 'warn',
  'opening-off-panel': 'stop',
  'openings-meet': 'stop',
  'brace-meets-driver': 'stop',
  'brace-meets-terminal': 'stop',
  'terminal-meets-driver': 'stop',
  'brace-window-small': 'note',
  'no-room-for-braces': 'warn',
  'panel-mode-low': 'note',
  'bevel-steep': 'warn',
  'two-person-lift': 'warn',
  'cutout-air-left-out': 'note',
  'lining-not-deducted': 'note',
  'net-off-target': 'note',
} as const satisfies Record<BoxFindingCode, 'stop' | 'warn' | 'note'>;
