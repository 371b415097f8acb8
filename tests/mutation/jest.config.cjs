const base = require('../../jest.config.js');

/** The tests that hold libs/rulebook, but for the random ones: a mutant is tried by all that reach it, thousands of times. */
module.exports = {
  ...base,
  rootDir: '../..',
  testMatch: ['<rootDir>/tests/rulebook/**/!(*.model).spec.ts'],
};
