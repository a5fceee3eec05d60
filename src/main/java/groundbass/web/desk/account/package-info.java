/** Setting up, signing in and out, changing a password. Knows nothing of episodes. */
package groundbass.web.desk.account;
