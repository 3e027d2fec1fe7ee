// The kind of box as a small section, with what is known of it so far: drawn while it is still being chosen.
import {
  ENCLOSURE_WORDS,
  type EnclosureKind,
  type SoundDesign,
  type SoundPort,
  type SoundResult,
} from '@gusset/contracts/sound';
import type { DrawnVent, EnclosureSectionInput } from '@gusset/drawings';
import { portsOf } from './enclosure-of.ts';

const KIND_WORDS: Readonly<Record<EnclosureKind, string>> = {
  'infinite-baffle': 'The drivers stand in a wall between trunk and cabin; the trunk is their box.',
  closed: 'One closed chamber behind the drivers.',
  vented: 'One chamber behind the drivers with a port to the outside.',
  'passive-radiator': 'One chamber behind the drivers with cones without motors instead of a port.',
  'single-tuned-bandpass':
    'The drivers stand in a divider: a closed chamber behind, a chamber with a port in front; only the port is heard.',
  'dual-tuned-bandpass':
    'The drivers stand in a divider between two chambers, each with a port; only the ports are heard.',
};

const EMPTY_SHARE = 0.5; // of the room, for chambers nobody has sized yet

/** `result` = what the design was last worked out to; null leaves what follows from it out of the drawing. */
export function soundSection(design: SoundDesign, result: SoundResult | null): EnclosureSectionInput {
  const { enclosure, targetNet, front, port, rearPort } = design;
  const has = portsOf(design);
  const isBandpass = enclosure.endsWith('bandpass');
  const rearLitres = targetNet?.litres ?? null;
  const frontLitres = front.net?.litres ?? null;
  const tuned = result?.enclosure === enclosure ? result : null;
  const share =
    rearLitres === null || frontLitres === null ? EMPTY_SHARE : rearLitres / (rearLitres + frontLitres);
  const rearVent = has.rearPort
    ? vent(rearPort, tuned?.rearTuningHz ?? null)
    : has.port && !isBandpass
      ? vent(port, tuned?.tuningHz ?? null)
      : null;
  return {
    title: ENCLOSURE_WORDS[enclosure],
    description: KIND_WORDS[enclosure],
    rear: enclosure === 'infinite-baffle' ? null : { note: litresNote(rearLitres), vent: rearVent },
    front: isBandpass ? { note: litresNote(frontLitres), vent: vent(port, tuned?.tuningHz ?? null) } : null,
    rearShare: share,
    radiatorNote: enclosure === 'passive-radiator' ? hertzNote(tuned?.radiator?.tuningHz ?? null) : null,
    isIsobaric: design.isobaric !== null,
  };
}

const vent = (port: SoundPort, tuningHz: number | null): DrawnVent => ({
  shape: port.shape,
  isFlared: (port.outerFlare?.mm ?? 0) > 0,
  note: hertzNote(tuningHz ?? (port.by === 'tuning' ? (port.tuning?.value ?? null) : null)),
});

const litresNote = (litres: number | null): string => (litres === null ? '' : `${litres.toFixed(1)} L`);
const hertzNote = (hz: number | null): string => (hz === null ? '' : `${hz.toFixed(1)} Hz`);
