/** Units in the house: receiving them, where they stand, repairs; and scanners, that work wherever one is. */
package org.benchwright.ui.internal.house;
