// Next writes next-env.d.ts only when it runs; these lines let `tsc` know CSS modules before the first build.
/// <reference types="next" />
/// <reference types="next/image-types/global" />
