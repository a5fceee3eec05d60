/**
 * What is made of a clause as a whole, before its places are taken out of it: what it leaves to the one before is filled
 * in, a time is kept to what is said of it, and bars and strings are compared.
 */
package groundbass.script.thread.whole;
