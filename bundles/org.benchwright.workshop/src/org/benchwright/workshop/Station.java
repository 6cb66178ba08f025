package org.benchwright.workshop;

/**
 * Where tests are carried out, and with what.
 *
 * @param name     the bench's name
 * @param software name and version of the program
 */
public record Station(String name, String software) {
}
