// Validates SARIF logs against the schema of SARIF 2.1.0.
//   node check-sarif.mjs FILE...
// Prints one JSON object: each file with the list of what is wrong with it, empty where all is well.
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import Ajv from 'ajv-draft-04';
import addFormats from 'ajv-formats';

const path = createRequire(import.meta.url).resolve('@microsoft/jest-sarif/lib/schemas/sarif-2.1.0-rtm.5.json');
// The published schema holds a pattern that is no regular expression in Unicode mode.
const ajv = new Ajv.default({ strict: false, allErrors: true, unicodeRegExp: false });
addFormats.default(ajv);
const validate = ajv.compile(JSON.parse(readFileSync(path, 'utf8')));

const verdicts = {};
for (const file of process.argv.slice(2)) {
  const isValid = validate(JSON.parse(readFileSync(file, 'utf8')));
  verdicts[file] = isValid ? [] : validate.errors.map(error => `${error.instancePath || '/'} ${error.message}`);
}

console.log(JSON.stringify(verdicts));
