import { designOf, type SoundInput } from '@gusset/contracts/sound';
import { pageScene, soundSheetDocument } from '@gusset/drawings';
import { describe, expect, it } from 'vitest';
import { INPUTS_BY_KIND, soundResultOf } from './sound-fixture.ts';
import { soundPaper } from './sound-paper.ts';

const TITLE_BLOCK = {
  shop: 'Quarry Road Sound',
  vehicle: 'Halden Brisk 2021',
  customer: 'T. Brandt',
  job: '2417',
  revision: 'B',
  drawn: 'M. Ilves',
  checked: null,
  units: 'mm',
  date: '2026-11-25',
  sheet: '03 Sound',
};

const documentOf = (input: SoundInput, paper: 'A4' | 'Letter' = 'A4') =>
  soundSheetDocument({
    ...soundPaper(designOf(input), soundResultOf(input)),
    paper,
    language: 'en',
    titleBlock: TITLE_BLOCK,
  });

describe('the paper of the sound sheet', () => {
  it.each(Object.entries(INPUTS_BY_KIND))(
    'is one page for a design of kind %s, within its margins',
    (_, input) => {
      for (const paper of ['A4', 'Letter'] as const) {
        const { pages } = documentOf(input, paper);
        expect(pages).toHaveLength(1);
        const [page] = pages;
        const scene = page === undefined ? null : pageScene(page, 'Sound');
        for (const block of page?.blocks ?? []) {
          if (block.kind !== 'figure') continue;
          expect(block.at.x + block.scene.widthPt * block.scale).toBeLessThanOrEqual(scene?.widthPt ?? 0);
          expect(block.at.y + block.scene.heightPt * block.scale).toBeLessThanOrEqual(scene?.heightPt ?? 0);
        }
      }
    },
  );
  it('opens with the verdict and carries every design that was compared', () => {
    const variants: SoundInput['variants'] = [
      { letter: 'B', name: 'closed', design: designOf(INPUTS_BY_KIND.closed) },
    ];
    const input = { ...INPUTS_BY_KIND.vented, name: 'deep', variants };
    const paper = soundPaper(designOf(input), soundResultOf(input));
    expect(paper.verdict).toMatch(/^Reaches \d+ Hz in this car$/);
    expect(paper.designs.rows.map(([name]) => name)).toEqual(['A deep', 'B closed']);
    expect(paper.level.curves.map(({ name }) => name)).toEqual(['A deep', 'B closed']);
    expect(paper.figures).toContainEqual({ label: 'Net volume', value: '60.0 L' });
  });
});
