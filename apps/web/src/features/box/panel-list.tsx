import type { BoxSheetResult } from '@gusset/contracts/box';
import type { Panel } from '@gusset/contracts/panel';
import type { LengthRule } from '../../shared/job/length-rule.ts';
import styles from './box-screen.module.css';

export type PanelListProps = { readonly result: BoxSheetResult; readonly rule: LengthRule };

/** Every board of the box, by the letters on the drawings. */
export function PanelList({ result, rule }: PanelListProps) {
  const { panels } = result.box;
  return (
    <section aria-label="Panels" className={styles.panels}>
      <h2 className="caption">
        Panels · {rule.unit}
        {result.isDraft ? ' · draft until the real sheet is measured' : ''}
      </h2>
      <table className={styles.table}>
        <thead className="unseen">
          <tr>
            <th scope="col">Mark</th>
            <th scope="col">Panel and its edges</th>
            <th scope="col">Length × width, thickness</th>
            <th scope="col">Mass</th>
          </tr>
        </thead>
        <tbody>
          {panels.map((panel) => (
            <tr key={panel.id}>
              <th scope="row" className="figures">
                {panel.mark}
              </th>
              <td>
                {panel.quantity > 1 ? `${panel.name} × ${panel.quantity}` : panel.name}
                <small>{edgeWords(panel)}</small>
              </td>
              <td className="figures">
                {rule.drawn(panel.lengthMm)} × {rule.drawn(panel.widthMm)}
                <small>{rule.drawn(panel.thicknessMm)} thick</small>
              </td>
              <td className="figures">{panel.massKg.toFixed(2)} kg</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

/** Bevels as dialled on the saw, from square; each once. */
function edgeWords({ edges }: Panel): string {
  const tilts = edges
    .map(({ bevelRad }) => ((bevelRad * 180) / Math.PI).toFixed(1))
    .filter((tilt) => tilt !== '0.0');
  if (tilts.length === 0) return 'square';
  return [...new Set(tilts)]
    .map((tilt) => `${tilts.filter((other) => other === tilt).length} × ${tilt}°`)
    .join(', ');
}
