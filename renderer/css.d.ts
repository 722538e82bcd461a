// Tells the compiler that a style sheet may be imported for its effect. Nothing is ever read from one.
declare module '*.css';
