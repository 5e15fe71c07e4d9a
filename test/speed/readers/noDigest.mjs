// Imported before a program, in each of its threads: no digest is worked out, so that what one costs can be seen.
import crypto from 'node:crypto';
import { syncBuiltinESMExports } from 'node:module';

const none = { update: () => none, digest: () => '0'.repeat(64) };
crypto.createHash = () => none;
syncBuiltinESMExports();
