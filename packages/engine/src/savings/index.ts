export { billMonth, type MonthBills, type MonthInput, type Savings } from './savings.ts';
