'use client';

import { EMPTY_DESIGN, ENCLOSURE_WORDS, ENCLOSURES, type EnclosureKind } from '@gusset/contracts/sound';
import { enclosureSection, sceneToSvgElements } from '@gusset/drawings';
import { soundSection } from '@gusset/sheets';
import { createElement } from 'react';
import { Label } from 'react-aria-components/Label';
import { Radio, RadioGroup } from 'react-aria-components/RadioGroup';
import styles from './enclosure-picker.module.css';

/** Drawn larger than it stands, so that its lines come out thin. */
const TILE = { widthPt: 230, heightPt: 136, textPt: 8 };

/** Each kind as the same section that the sheet draws large, without figures. */
const TILES = ENCLOSURES.map((kind) => {
  const section = soundSection({ ...EMPTY_DESIGN, enclosure: kind }, null);
  const scene = enclosureSection(section, TILE);
  return {
    kind,
    elements: sceneToSvgElements({ ...scene, layers: scene.layers.filter(({ id }) => id !== 'notes') }),
  };
});

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
        {TILES.map(({ kind, elements }) => (
          <Radio key={kind} value={kind} className={styles.tile}>
            <svg viewBox={`0 0 ${TILE.widthPt} ${TILE.heightPt}`} aria-hidden="true">
              {elements.map(function draw({
                tag,
                id,
                props,
                children,
                text,
              }): ReturnType<typeof createElement> {
                return createElement(tag, { key: id, ...props }, text ?? children.map(draw));
              })}
            </svg>
            <span>{ENCLOSURE_WORDS[kind]}</span>
          </Radio>
        ))}
      </div>
    </RadioGroup>
  );
}
