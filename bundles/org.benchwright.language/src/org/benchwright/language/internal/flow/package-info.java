/** The ways through a procedure as a graph, and what holds on all of them. */
package org.benchwright.language.internal.flow;
