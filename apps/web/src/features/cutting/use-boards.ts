'use client';

import { useQuery } from '@tanstack/react-query';
import type { Option } from '../../shared/controls/option.ts';
import { useTRPC } from '../../shared/data/api-client.ts';
import type { CuttingJobSheet } from './cutting-types.ts';

const MOST_BOARDS = 200;
/** Sold under one thickness: what the trade calls 18 mm is 17.8 to 18.2. */
const SAME_NOMINAL_MM = 0.5;

export type ListedBoard = {
  readonly id: string;
  readonly name: string;
  readonly lengthMm: number;
  readonly widthMm: number;
  readonly material: string;
  readonly nominalThicknessMm: number;
};

/** The boards that this job cuts, and those of the catalogue that could serve them. */
export function useBoards(sheet: CuttingJobSheet) {
  const trpc = useTRPC();
  const list = useQuery(trpc.part.sheet.list.queryOptions({ limit: MOST_BOARDS }));
  const { facts, upstream } = sheet.data;
  const known = facts.boards.map(({ id, name, figures }): ListedBoard => ({ id, name, ...figures }));
  const listed = (list.data?.rows ?? []).map(
    ({ id, maker, name, figures }): ListedBoard => ({ id, name: `${maker} ${name}`.trim(), ...figures }),
  );
  const all = [...known, ...listed.filter(({ id }) => !known.some((board) => board.id === id))];
  const ofBox = new Set((upstream.box?.box.panels ?? []).map(({ materialId }) => materialId));
  const cutIds = new Set([
    ...ofBox,
    ...sheet.input.handParts.flatMap(({ boardId }) => (boardId === null ? [] : [boardId])),
  ]);
  return {
    all,
    cut: all.filter(({ id }) => cutIds.has(id)),
    isPending: list.isPending,
    isError: list.isError,
    /** Itself first, then other sizes of the same board. */
    sizesFor: (board: ListedBoard): readonly ListedBoard[] => [
      board,
      ...all.filter(
        (other) =>
          other.id !== board.id &&
          other.material === board.material &&
          Math.abs(other.nominalThicknessMm - board.nominalThicknessMm) <= SAME_NOMINAL_MM,
      ),
    ],
  };
}

export function boardOptions(boards: readonly ListedBoard[]): readonly Option<string>[] {
  return boards.map(({ id, name }) => ({ id, label: name }));
}
