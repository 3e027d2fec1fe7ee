'use client';

import { EMPTY_DESIGN, ENCLOSURE_WORDS, ENCLOSURES, type EnclosureKind } from '@gusset/contracts/sound';
import { enclosureSection, type SvgElement, sceneToSvgElements } from '@gusset/drawings';
import { soundSection } from '@gusset/sheets';
import { createElement, memo, type ReactNode } from 'react';
import { Label } from 'react-aria-components/Label';
import { Radio, RadioGroup } from 'react-aria-components/RadioGroup';
import styles from './enclosure-picker.module.css';

/** Drawn larger than it stands, so that its lines come out thin. */
const TILE = { widthPt: 230, heightPt: 136, textPt: 8 };

/** A kind as the same section that the sheet draws large, without figures; it never changes, so it is drawn once. */
const TileDrawing = memo(function TileDrawing({ kind }: { readonly kind: EnclosureKind }) {
  const scene = enclosureSection(soundSection({ ...EMPTY_DESIGN, enclosure: kind }, null), TILE);
  const layers = scene.layers.filter(({ id }) => id !== 'notes');
  return (
    <svg viewBox={`0 0 ${TILE.widthPt} ${TILE.heightPt}`} aria-hidden="true">
      {sceneToSvgElements({ ...scene, layers }).map(toElement)}
    </svg>
  );
});

function toElement({ tag, id, props, children, text }: SvgElement): ReactNode {
  return createElement(tag, { key: id, ...props }, text ?? children.map(toElement));
}

export type EnclosurePickerProps = {
  readonly label: string;
  readonly value: EnclosureKind;
  readonly onChange: (kind: EnclosureKind) => void;
  readonly isDisabled: boolean;
};

/** The kind of box, chosen by its section. */
export function EnclosurePicker({ label, value, onChange, isDisabled }: EnclosurePickerProps) {
  return (
    <RadioGroup
      className={styles.group}
      value={value}
      isDisabled={isDisabled}
      onChange={(key) => {
        const chosen = ENCLOSURES.find((kind) => kind === key);
        if (chosen !== undefined) onChange(chosen);
      }}
    >
      <Label className="caption">{label}</Label>
      <div className={styles.tiles}>
        {ENCLOSURES.map((kind) => (
          <Radio key={kind} value={kind} className={styles.tile}>
            <TileDrawing kind={kind} />
            <span>{ENCLOSURE_WORDS[kind]}</span>
          </Radio>
        ))}
      </div>
    </RadioGroup>
  );
}
