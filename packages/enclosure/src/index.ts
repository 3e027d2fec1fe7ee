export { buildFlatBoard } from './boards/build-flat-board.ts';
export { boxForNetVolume, type NetVolumeSearch, type VariedDimension } from './box-for-net-volume.ts';
export { buildBox } from './build-box.ts';
export { mirrorDesign } from './mirror-design.ts';
