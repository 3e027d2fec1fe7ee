'use client';

import { createAuthClient } from 'better-auth/react';

/** Sign-in, sign-out, passwords: same origin, under /api/auth. */
export const authClient = createAuthClient({ basePath: '/api/auth' });
