'use client';

import type { ComparedDesign, DesignLetter, SoundResult } from '@gusset/contracts/sound';
import { ENCLOSURE_WORDS } from '@gusset/contracts/sound';
import { Button } from '../../shared/controls/button.tsx';
import { Checkbox } from '../../shared/controls/checkbox.tsx';
import { TextField } from '../../shared/controls/text-field.tsx';
import type { CurveView } from './curve-view.ts';
import { chooseDesign, keepBeside, removeDesign, renameDesign } from './design-edits.ts';
import { DesignLine } from './design-line.tsx';
import styles from './designs-table.module.css';
import type { SoundSheet } from './use-sound-sheet.ts';

export type DesignsTableProps = {
  readonly sheet: SoundSheet;
  readonly result: SoundResult;
  readonly view: CurveView;
};

/** The designs of the sheet side by side: which one counts, what each does, which are drawn. */
export function DesignsTable({ sheet, result, view }: DesignsTableProps) {
  const { input, change, changeNow, mayEdit } = sheet;
  const { letters, onLetters } = view;
  const next = keepBeside(input);
  const show = (letter: DesignLetter, isShown: boolean) =>
    onLetters(isShown ? [...letters, letter] : letters.filter((shown) => shown !== letter));
  return (
    <section className={styles.designs} aria-label="Designs">
      <div className={styles.head}>
        <h2 className="caption">Designs side by side</h2>
        {mayEdit && next !== null ? (
          <Button onPress={() => changeNow(next)}>Keep this one and try another</Button>
        ) : null}
      </div>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by key. */}
      <section className={styles.scroll} aria-label="Designs as a table" tabIndex={0}>
        <table className={styles.table}>
          <thead>
            <tr>
              <th scope="col">Design</th>
              <th scope="col">Net</th>
              <th scope="col">Tuned</th>
              <th scope="col">Reaches</th>
              <th scope="col">Loudest</th>
              <th scope="col">Travel allows</th>
              <th scope="col">Port air</th>
              <th scope="col">Load</th>
            </tr>
          </thead>
          <tbody>
            <tr data-counts="">
              <th scope="row">
                <NameCell sheet={sheet} letter={input.letter} name={input.name} design={result} />
              </th>
              <Figures design={result} />
            </tr>
            {result.variants.map((variant) => (
              <tr key={variant.letter}>
                <th scope="row">
                  <NameCell
                    sheet={sheet}
                    letter={variant.letter}
                    name={variant.name}
                    design={variant.state === 'ready' ? variant.design : null}
                  />
                  <div className={styles.acts} data-screen-only="">
                    {variant.state === 'ready' ? (
                      <Checkbox
                        isSelected={letters.includes(variant.letter)}
                        onChange={(isShown) => show(variant.letter, isShown)}
                        aria-label={`Draw ${variant.letter} over the chart`}
                      >
                        Draw
                      </Checkbox>
                    ) : null}
                    {mayEdit ? (
                      <>
                        <Button
                          look="quiet"
                          aria-label={`Choose ${variant.letter}`}
                          onPress={() => changeNow(chooseDesign(input, variant.letter))}
                        >
                          Choose
                        </Button>
                        <Button
                          look="quiet"
                          aria-label={`Take away ${variant.letter}`}
                          onPress={() => change(removeDesign(input, variant.letter))}
                        >
                          Take away
                        </Button>
                      </>
                    ) : null}
                  </div>
                </th>
                {variant.state === 'ready' ? (
                  <Figures design={variant.design} />
                ) : (
                  <td colSpan={7} className={styles.open}>
                    {variant.why}
                  </td>
                )}
              </tr>
            ))}
          </tbody>
        </table>
      </section>
    </section>
  );
}

type NameCellProps = {
  readonly sheet: SoundSheet;
  readonly letter: DesignLetter;
  readonly name: string;
  readonly design: Figured | null;
};

type Figured = Omit<ComparedDesign, 'curves'>;

const NAME_LIMIT = 60;

function NameCell({ sheet, letter, name, design }: NameCellProps) {
  const { input, change, mayEdit } = sheet;
  return (
    <div className={styles.name}>
      <DesignLine letter={letter} isChosen={letter === input.letter} />
      <span>{letter}</span>
      <span className={mayEdit ? styles.onPaper : undefined}>
        {name === '' && mayEdit ? 'unnamed' : name}
      </span>
      {mayEdit ? (
        <TextField
          label={`Name of ${letter}`}
          value={name}
          onChange={(given) => change(renameDesign(input, letter, given.slice(0, NAME_LIMIT)))}
          placeholder="unnamed"
        />
      ) : null}
      {design === null ? null : (
        <small>
          {design.count} × {design.driverName} · {ENCLOSURE_WORDS[design.enclosure]}
        </small>
      )}
    </div>
  );
}

const hertz = (value: number | null): string => (value === null ? '–' : `${value.toFixed(1)} Hz`);

function Figures({ design }: { readonly design: Figured }) {
  const { netLitres, travelLimitWatts, ports } = design;
  const fastest = ports.map(({ fastestMps }) => fastestMps.toFixed(1)).join(' / ');
  const lowest = design.reachesHz === null ? 'below 10 Hz' : hertz(design.reachesHz);
  return (
    <>
      <td className="figures">{netLitres === null ? '–' : `${netLitres.toFixed(1)} L`}</td>
      <td className="figures">{hertz(design.tuningHz)}</td>
      <td className="figures">{lowest}</td>
      <td className="figures">{design.loudestDb.toFixed(1)} dB</td>
      <td className="figures">{travelLimitWatts === null ? '–' : `${Math.round(travelLimitWatts)} W`}</td>
      <td className="figures">{fastest === '' ? '–' : `${fastest} m/s`}</td>
      <td className="figures">{design.rdcOhm.toFixed(2)} Ω</td>
    </>
  );
}
