package org.benchwright.language.editing;

/** What a row of the contents stands for. */
public enum ContentsKind {
    FAMILY, PROCEDURE, GROUP, LAMP, DISPLAY, MODE, ITEM, FAULT, HAZARD, INSTRUMENT, PRECONDITION, STAGE, SOAK, MAKE_SAFE, STEP
}
