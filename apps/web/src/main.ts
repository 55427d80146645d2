import '@unitbook/form';
import { keepOffline } from './keep-offline.ts';

if (import.meta.env.PROD) keepOffline();
