/**
 * What a line says more than once: stretches that go alike at the same frets or moved along or across the neck, and the
 * one thing in which another stretch is not like them.
 */
package groundbass.checks.kin;
