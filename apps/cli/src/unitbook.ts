#!/usr/bin/env node
console.error('usage: unitbook <command>');
process.exitCode = 2;
