// Where the pinned npm packages are: in the scratch folder that run.sh fills.
import { createRequire } from 'node:module';
import { join } from 'node:path';

if (!process.env.SCRATCH) throw new Error('SCRATCH is not set: start this by tests/reference/run.sh browser');

const folder = join(process.env.SCRATCH, 'npm', 'node_modules');

export const packages = {
    require: createRequire(join(folder, 'packages.js')),
    /** @param {string[]} parts @returns {string} a file of a package */
    file: (...parts) => join(folder, ...parts),
};
