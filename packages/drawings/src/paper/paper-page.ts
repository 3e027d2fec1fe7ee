// A page of paper as data: blocks in reading order, each of them scene items, so that the page is drawn by the same
// renderers as everything else and the PDF knows what is a heading, a figure or a table.
import type { Scene, SceneItem } from '../scene/scene.ts';
import type { Spot } from '../scene/spot.ts';
import { type PaperFormat, paperExtent } from './paper-size.ts';

export type WordsRole = 'H1' | 'H2' | 'P';

export type TableRow = { readonly header: boolean; readonly cells: readonly (readonly SceneItem[])[] };

export type PaperBlock =
  | {
      readonly kind: 'words';
      readonly role: WordsRole;
      readonly items: readonly SceneItem[];
      /** Where a tap on the words leads; null = nowhere. */
      readonly url: string | null;
    }
  | { readonly kind: 'figure'; readonly scene: Scene; readonly at: Spot; readonly scale: number }
  | { readonly kind: 'table'; readonly title: string; readonly rows: readonly TableRow[] }
  /** Rules, frames, page numbers: no part of the text. */
  | { readonly kind: 'furniture'; readonly items: readonly SceneItem[] };

export type PaperPage = PaperFormat & {
  /** Bookmark of the page; null = it goes on with the one before. */
  readonly bookmark: string | null;
  readonly blocks: readonly PaperBlock[];
};

export type PaperDocument = {
  readonly title: string;
  /** BCP 47, for screen readers and hyphenation. */
  readonly language: string;
  readonly author: string;
  readonly pages: readonly PaperPage[];
};

/** What a block draws, in page points. */
export function blockItems(block: PaperBlock): readonly SceneItem[] {
  switch (block.kind) {
    case 'figure':
      return [{ kind: 'inset', scene: block.scene, at: block.at, scale: block.scale, key: null }];
    case 'table':
      return block.rows.flatMap(({ cells }) => cells.flat());
    default:
      return block.items;
  }
}

/** The page as one drawing, for a preview on screen or for printing from the browser. */
export function pageScene(page: PaperPage, title: string): Scene {
  const { widthPt, heightPt } = paperExtent(page);
  const figures = page.blocks.flatMap((block) => (block.kind === 'figure' ? [block.scene.description] : []));
  return {
    title: page.bookmark === null ? title : `${title}: ${page.bookmark}`,
    description: figures.join(' '),
    widthPt,
    heightPt,
    world: null,
    scaleLabel: null,
    layers: page.blocks.map((block, index) => ({ id: `${block.kind}-${index}`, items: blockItems(block) })),
  };
}
