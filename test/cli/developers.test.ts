import { existsSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';

const guide = readFileSync('DEVELOPERS.md', 'utf8');
const { scripts } = JSON.parse(readFileSync('package.json', 'utf8'));

test('every path that the guide names is there', () => {
  const paths = [...guide.matchAll(/`((?:src|test|\.ci|\.dependency)[\w./-]*)`/g)].map(
    ([, path = '']) => path,
  );
  expect(paths.length).toBeGreaterThan(30);
  expect(paths.filter((path) => !existsSync(path))).toEqual([]);
});

test('every npm command that the guide names is one of the package', () => {
  const named = [...guide.matchAll(/`npm (?:run )?(\w+)/g)].map(([, name]) => name);
  expect(named.filter((name) => name !== 'ci' && !(`${name}` in scripts))).toEqual([]);
});
