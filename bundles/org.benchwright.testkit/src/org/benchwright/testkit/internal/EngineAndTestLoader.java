package org.benchwright.testkit.internal;

import java.io.IOException;
import java.net.URL;
import java.util.Enumeration;

import net.jqwik.engine.JqwikTestEngine;

/** Sees a test's classes and, after them, the engine with its services: inside OSGi no single bundle sees both. */
final class EngineAndTestLoader extends ClassLoader {

    private final ClassLoader engine = JqwikTestEngine.class.getClassLoader();

    EngineAndTestLoader(ClassLoader test) {
        super(test);
    }

    @Override
    protected Class<?> findClass(String name) throws ClassNotFoundException {
        return engine.loadClass(name);
    }

    @Override
    protected URL findResource(String name) {
        return engine.getResource(name);
    }

    @Override
    protected Enumeration<URL> findResources(String name) throws IOException {
        return engine.getResources(name);
    }
}
